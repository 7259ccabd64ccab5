import { mkdtempSync, readdirSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { pageOf } from '../../../src/commands/account-files.ts';
import { photosFor } from '../../../src/commands/account-photos.ts';
import { accountOf } from '../../../src/commands/write.ts';
import { writeUp, type WriteOptions, type Written } from '../../../src/core/account/account.ts';
import type { Block } from '../../../src/core/account/block.ts';
import { fold } from '../../../src/core/session/fold.ts';
import { nodeFiles } from '../../../src/store/node-files.ts';
import { loadSession } from '../../../src/store/sessions.ts';
import { trusted } from '../../../src/core/problem.ts';
import { contrast } from '../../helpers/contrast.ts';
import { hostileTexts } from '../../helpers/hostile.ts';
import { after, headerFor } from '../../helpers/story.ts';
import { absent, isInstalled, startBrowser, type Browser, type BrowserPage } from './browser.ts';

const skipped = isInstalled ? '' : ` (${absent})`;
const examples = 'sessions/examples';
const names = readdirSync(examples).filter((name) => name.endsWith('.jsonl'));

/** An example as the page that is written of it, with its pictures and photos. */
function exampleOf(name: string, options: WriteOptions = {}) {
  const recovered = trusted(loadSession(nodeFiles, join(examples, name)));
  const story = fold(recovered.header, recovered.events);
  const photos = photosFor(nodeFiles, join(examples, name), story, undefined);
  const written = accountOf(recovered, { ...options, pictures: 'p', photos: photos.told });
  const pictured = new Map<string, string | Uint8Array>([
    ...Object.entries(written.pictures),
    ...photos.copies,
  ]);
  return { page: pageOf(written, 'p', pictured), findings: story.findings.length };
}

/** Harm that only a page can do; `window.harm` is set by what runs. */
const harm: readonly string[] = [
  ...hostileTexts,
  '<script>window.harm = 1</script>',
  '<img src=x onerror="window.harm = 1">',
  '" onerror="window.harm = 1" x="',
  "' onload='window.harm = 1' x='",
  '<svg onload="window.harm = 1"><image href="http://127.0.0.1:9/x.png"/></svg>',
  '</style><style>@import url(http://127.0.0.1:9/x.css); main { display: none }</style>',
  '</title><script>window.harm = 1</script>',
  '<a href="javascript:window.harm = 1">here</a>',
  '<iframe srcdoc="<script>parent.harm = 1</script>"></iframe>',
  '<meta http-equiv="refresh" content="0; url=http://127.0.0.1:9/">',
  '<base href="http://127.0.0.1:9/"><link rel="stylesheet" href="x.css">',
  '--><script>window.harm = 1</script><!--',
  'points\u202e\u2066 straight "quotes" and \u2018others\u2019',
];

/** A text in every kind of block. */
const everyBlock = (text: string): readonly Block[] => [
  { kind: 'title', text },
  { kind: 'heading', text, level: 2 },
  { kind: 'paragraph', text: [text, { text, to: text.toWellFormed() }] },
  { kind: 'list', items: [text], numbered: true },
  { kind: 'table', head: [text], rows: [[text]] },
  { kind: 'warning', name: text, text },
  { kind: 'quote', lines: [text, text] },
  { kind: 'margin', text },
  { kind: 'picture', file: text, caption: text },
  { kind: 'picture', file: 'p/way.svg', caption: text },
  { kind: 'chart', text },
];

/** A job with the text wherever a person can type, its pictures drawn of it. */
function hostileJob(text: string): Written {
  const said = text.slice(0, 5000);
  const header = { ...headerFor(), who: said, vehicle: { name: said, facts: {} } };
  const { story } = after(
    [
      { do: 'find', check: 'lamp', result: 'dark' },
      { do: 'note', text: said },
      { do: 'skip', check: 'look', reason: said },
      { do: 'part-off', part: said, where: said },
      { do: 'repair', cause: 'fuse', text: said, parts: [said], cost: said },
      { do: 'follow-up', text: said, urgency: 'unsafe' },
      { do: 'close', as: 'given-up', text: said },
    ],
    header,
  );
  const written = writeUp(story, { events: 9, passedOver: 0, link: 'ab' }, { pictures: 'p' });
  return { ...written, blocks: [...written.blocks, ...everyBlock(text)] };
}

/** Every text on the page with its colors as the browser works them out, each pair once. */
const colorsOf = `(() => {
  const hex = (color) => '#' + color.match(/\\d+/g).slice(0, 3)
    .map((part) => Number(part).toString(16).padStart(2, '0')).join('');
  const behind = (node) => {
    const { backgroundColor } = getComputedStyle(node);
    return backgroundColor === 'rgba(0, 0, 0, 0)' && node.parentElement
      ? behind(node.parentElement) : backgroundColor;
  };
  const texts = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  const pairs = new Set();
  while (texts.nextNode())
    if (texts.currentNode.textContent.trim() !== '') {
      const node = texts.currentNode.parentElement;
      pairs.add(hex(getComputedStyle(node).color) + ' ' + hex(behind(node)));
    }
  return [...pairs].map((pair) => pair.split(' '));
})()`;

describe.skipIf(!isInstalled)(`an account as a page in Chromium${skipped}`, () => {
  let browser: Browser | undefined;
  beforeAll(async () => {
    browser = await startBrowser();
  });
  afterAll(() => browser?.close());

  /** A page opened from the disk, as somebody does who was sent it; what it asked for and complained of. */
  async function opened(html: string): Promise<{
    readonly page: BrowserPage;
    readonly asked: readonly string[];
    readonly trouble: readonly string[];
  }> {
    if (browser === undefined) throw new Error('the browser did not start');
    const path = join(mkdtempSync(join(tmpdir(), 'droplight-page-')), 'account.html');
    writeFileSync(path, html);
    const page = await browser.newPage();
    const [asked, trouble]: [string[], string[]] = [[], []];
    page.on('request', (request) => asked.push(request.url()));
    page.on('console', (said) => trouble.push(`${said.type()}: ${said.text()}`));
    page.on('pageerror', (error) => trouble.push(error.message));
    const url = pathToFileURL(path).href;
    await page.goto(url);
    return {
      page,
      asked: asked.filter((one) => one !== url && !one.startsWith('data:image/')),
      trouble,
    };
  }

  test.each(names)(
    '%s: asks for nothing, shows every picture, and no width cuts it',
    async (name) => {
      const { page, asked, trouble } = await opened(exampleOf(name).page);

      for (const width of [320, 400, 800]) {
        await page.setViewport({ width, height: 900 });
        expect(await page.evaluate('document.documentElement.scrollWidth')).toBe(width);
      }
      expect(
        await page.evaluate(
          '[...document.images].filter((one) => one.naturalWidth === 0 || one.alt.length < 20).length',
        ),
      ).toBe(0);
      expect(await page.evaluate('document.images.length')).toBeGreaterThan(0);
      expect(await page.evaluate('document.querySelectorAll("th:not([scope])").length')).toBe(0);
      const dead = `[...document.querySelectorAll('a')].filter((one) =>
      document.getElementById(decodeURI(one.hash.slice(1))) === null).length`;
      expect(await page.evaluate(dead)).toBe(0);
      expect([asked, trouble]).toEqual([[], []]);
    },
  );

  // WCAG 2.2, success criterion 1.4.3: 4.5 to 1 for text; from memory.
  test.each(['light', 'dark'])('all text stands out from what is behind it, %s', async (value) => {
    const { page } = await opened(pageOf(hostileJob('plain words'), 'p', new Map()));
    await page.emulateMediaFeatures([{ name: 'prefers-color-scheme', value }]);

    const pairs = await page.evaluate<readonly [string, string][]>(colorsOf);

    expect(pairs.length).toBeGreaterThan(4);
    expect(pairs.filter(([ink, paper]) => contrast(ink, paper) < 4.5)).toEqual([]);
    const paper = await page.evaluate<string>('getComputedStyle(document.body).backgroundColor');
    expect(paper).toBe(value === 'dark' ? 'rgb(22, 24, 26)' : 'rgb(253, 252, 248)');
  });

  test.each(harm)('%j is text on the page and nothing else', async (text) => {
    const written = hostileJob(text);
    const pictured = new Map(Object.entries(written.pictures));
    const { page, asked, trouble } = await opened(pageOf(written, 'p', pictured));

    const found = await page.evaluate<object>(`({
      harm: window.harm,
      handlers: [...document.querySelectorAll('*')].flatMap((one) => [...one.attributes])
        .map(({ name }) => name).filter((name) => name.startsWith('on')),
      elements: [...document.querySelectorAll('script, iframe, object, embed, link, base, form, svg, main style')].length,
      styles: document.querySelectorAll('style').length,
      links: [...document.links].map(({ href }) => href)
        .filter((href) => !href.startsWith(location.href.split('#')[0] + '#')),
      turned: /[\\u202a-\\u202e\\u2066-\\u2069]/.test(document.documentElement.textContent),
      shown: getComputedStyle(document.querySelector('main')).display,
    })`);
    expect(found).toEqual({
      handlers: [],
      elements: 0,
      styles: 1,
      links: [],
      turned: false,
      shown: 'block',
    });
    expect([asked, trouble]).toEqual([[], []]);
  });

  test("the page's own policy stops what could still be put into it", async () => {
    const { page, asked } = await opened(
      exampleOf(names[0] ?? '').page.replace(
        '<main>',
        '<main><script>window.harm = 1</script><img src="http://127.0.0.1:9/x.png" onerror="window.harm = 1">',
      ),
    );

    expect(await page.evaluate('window.harm')).toBe(undefined);
    // Chromium tells of a picture that it then does not fetch.
    expect(asked.filter((url) => !url.endsWith('/x.png'))).toEqual([]);
  });

  /** Sheets of paper: each has an object of its own in the file (ISO 32000, 7.7.3.3; from memory). */
  const sheets = async (page: BrowserPage): Promise<number> =>
    Buffer.from(await page.pdf({ preferCSSPageSize: true }))
      .toString('latin1')
      .match(/\/Type\s*\/Page\b/g)?.length ?? 0;

  test('a short job is two sheets of paper, and what is short is one', async () => {
    const printed = await Promise.all(
      names.map(async (name) => {
        const full = exampleOf(name);
        const { page } = await opened(full.page);
        const whole = await sheets(page);
        const short = await opened(exampleOf(name, { length: 'short' }).page);
        return { findings: full.findings, whole, short: await sheets(short.page) };
      }),
    );

    const few = printed.filter(({ findings }) => findings <= 10);
    expect(few.length).toBeGreaterThan(1);
    expect(few.filter(({ whole }) => whole < 1 || whole > 2)).toEqual([]);
    expect(new Set(printed.map(({ short }) => short))).toEqual(new Set([1]));
  });
});
