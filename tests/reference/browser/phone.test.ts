import fc from 'fast-check';
import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { halfBlocks } from '../../../src/core/drawing/half-blocks.ts';
import { barePicture, maxPicture } from '../../../src/core/picture/picture.ts';
import { problemsOf, trusted } from '../../../src/core/problem.ts';
import { codeOf } from '../../../src/phone/code.ts';
import { openPhone } from '../../../src/phone/phone.ts';
import { pictureOf } from '../../../src/store/photos.ts';
import {
  drawnGif,
  drawnJpeg,
  drawnPicture,
  drawnWebp,
  exifSegment,
  exifWithPlace,
} from '../../helpers/drawn-picture.ts';
import {
  absent,
  isInstalled,
  readCode,
  startBrowser,
  type Browser,
  type BrowserPage,
} from './browser.ts';

const skipped = isInstalled ? '' : ` (${absent})`;

/** Dots across a module: a camera sees more than one. */
const across = 4;

/** What a camera reads of half blocks: what is filled is white and the rest black, or the other way round. */
function seen(rows: readonly string[], filled: 'white' | 'black' = 'white') {
  if (readCode === undefined) throw new Error(absent);
  const width = rows[0]?.length ?? 0;
  const light = (x: number, y: number): boolean => {
    const glyph = rows[Math.floor(y / 2)]?.[x];
    return (glyph === '█' || glyph === (y % 2 === 0 ? '▀' : '▄')) === (filled === 'white');
  };
  const dots = new Uint8ClampedArray(4 * (width * across) ** 2).fill(255);
  for (let y = 0; y < width * across; y += 1)
    for (let x = 0; x < width * across; x += 1) {
      const at = 4 * (y * width * across + x);
      dots.fill(light(Math.floor(x / across), Math.floor(y / across)) ? 255 : 0, at, at + 3);
    }
  const read = 'default' in readCode ? readCode.default : readCode;
  return read(dots, width * across, width * across, { inversionAttempts: 'dontInvert' })?.data;
}

describe.skipIf(!isInstalled)(`the code held against jsQR 1.4.0${skipped}`, () => {
  test('the code on the golden frames is read as the address beside it', () => {
    const url = 'http://192.168.100.120:41873/q8Zb3XwK1tY7uMv0aR5cNg';
    const framed = ['60x20', '80x24'].map((size) => {
      const lines = readFileSync(`tests/golden/frames/phone-${size}.txt`, 'utf8').split('\n');
      return lines.map((line) => line.slice(0, 37)).filter((line) => line.startsWith('████'));
    });

    expect(framed.map((rows) => rows.length)).toEqual([19, 19]);
    expect(framed.map((rows) => seen(rows))).toEqual([url, url]);
  });

  test('every address of a network is read back, and fits a window of 60 by 20', () => {
    fc.assert(
      fc.property(
        fc.ipV4(),
        fc.integer({ min: 1024, max: 65_535 }),
        fc.uint8Array({ minLength: 16, maxLength: 16 }),
        (host, port, token) => {
          const url = `http://${host}:${port}/${Buffer.from(token).toString('base64url')}`;
          const rows = halfBlocks(codeOf(url));
          expect(seen(rows)).toBe(url);
          expect(rows.length).toBeLessThan(20);
          expect(rows[0]?.length).toBeLessThan(40);
        },
      ),
      { seed: 20_260_411, numRuns: 60 },
    );
  });

  test('turned, dark and light have changed places', () => {
    const rows = halfBlocks(codeOf('http://10.0.0.5:40000/x'), true);

    expect(seen(rows)).toBeUndefined();
    expect(seen(rows, 'black')).toBe('http://10.0.0.5:40000/x');
  });
});

describe.skipIf(!isInstalled)(`the page of the phone in Chromium${skipped}`, () => {
  let browser: Browser | undefined;
  beforeAll(async () => {
    browser = await startBrowser();
  });
  afterAll(() => browser?.close());
  const newPage = async (): Promise<BrowserPage> => {
    if (browser === undefined) throw new Error('the browser did not start');
    return browser.newPage();
  };

  /** The page of a phone on this machine, opened in the browser, and what was taken. */
  async function opened() {
    const taken: Uint8Array[] = [];
    const take = (bytes: Uint8Array) => {
      const picture = pictureOf(bytes);
      if (picture.kind === 'good') taken.push(bytes);
      return problemsOf(picture)[0];
    };
    const phone = trusted(await openPhone('127.0.0.1', { take, idle: () => {} }));
    const page = await newPage();
    const trouble: string[] = [];
    page.on('console', (said) => trouble.push(`${said.type()}: ${said.text()}`));
    await page.goto(phone.url);
    return { ...phone, page, taken, trouble };
  }

  /** Sends a file by the form, as a thumb does; what the page then says. */
  async function sent(page: BrowserPage, name: string, bytes: Uint8Array): Promise<string> {
    const path = join(mkdtempSync(join(tmpdir(), 'droplight-sent-')), name);
    writeFileSync(path, bytes);
    await (await page.$('#photo'))?.uploadFile(path);
    await Promise.all([page.waitForNavigation(), page.click('button')]);
    return page.evaluate<string>('document.querySelector("[role=status]").textContent');
  }

  test('pictures are sent one after the other, in its own style and without a script', async () => {
    const { page, taken, stop, trouble } = await opened();

    const said = [
      await sent(page, 'IMG 0001.png', drawnPicture('the fuse')),
      await sent(page, 'image.jpg', drawnJpeg()),
    ];

    expect(said.map((words) => words.slice(0, 6))).toEqual(['Taken:', 'Taken:']);
    expect(taken.map((bytes) => bytes.length)).toEqual([
      drawnPicture('the fuse').length,
      drawnJpeg().length,
    ]);
    expect(await page.evaluate('getComputedStyle(document.body).maxWidth')).toBe('540px');
    expect(await page.evaluate('document.scripts.length')).toBe(0);
    // The browser asks for an icon of its own accord.
    expect(trouble.filter((line) => !line.includes('404'))).toEqual([]);
    stop();
  });

  test.each<[what: string, name: string, bytes: Uint8Array, words: string]>([
    ['a page called a picture', 'a.png', Buffer.from('<script>alert(1)</script>'), 'no picture'],
    ['a drawing with a script', 'a.svg', Buffer.from('<svg onload="x()"/>'), 'no picture'],
    ['half a picture', 'b.png', drawnPicture('x').subarray(0, 5000), 'ends before it is whole'],
    ['what most phones write', 'c.heic', Buffer.from('\0\0\0\x18ftypheic\0\0\0\0'), 'HEIC'],
    ['more than the limit', 'd.png', Buffer.alloc(maxPicture + 50_000), 'larger than 20 MB'],
    ['an empty file', 'e.png', Buffer.alloc(0), 'empty'],
  ])('%s is refused with a word, and nothing is kept', async (_, name, bytes, words) => {
    const { page, taken, stop } = await opened();

    expect(await sent(page, name, bytes)).toContain(words);
    expect(taken).toEqual([]);
    stop();
  });

  test('once it is shut the browser finds nothing', async () => {
    const { page, url, stop } = await opened();
    stop();

    await expect(page.goto(url)).rejects.toThrow('ERR_CONNECTION_REFUSED');
  });

  /** How the browser shows a picture: its size, and its dots as it paints them. */
  const painted = (page: BrowserPage, kind: string, bytes: Uint8Array) =>
    page.evaluate<string>(`(async () => {
      const image = new Image();
      image.src = 'data:image/${kind};base64,${Buffer.from(bytes).toString('base64')}';
      await image.decode();
      const canvas = new OffscreenCanvas(image.naturalWidth, image.naturalHeight);
      const pen = canvas.getContext('2d');
      pen.drawImage(image, 0, 0);
      const { data } = pen.getImageData(0, 0, canvas.width, canvas.height);
      return canvas.width + 'x' + canvas.height + ' ' + Array.from(data).join();
    })()`);

  /** A picture that the browser itself writes, in one of its kinds. */
  const written = async (page: BrowserPage, kind: string): Promise<Uint8Array> =>
    Buffer.from(
      await page.evaluate<string>(`(async () => {
        const canvas = new OffscreenCanvas(24, 16);
        const pen = canvas.getContext('2d');
        for (let x = 0; x < 24; x += 1) {
          pen.fillStyle = 'hsl(' + 15 * x + ' 80% 50%)';
          pen.fillRect(x, 0, 1, 4 + x / 2);
        }
        const blob = await canvas.convertToBlob({ type: 'image/${kind}' });
        const bytes = new Uint8Array(await blob.arrayBuffer());
        return btoa(String.fromCharCode(...bytes));
      })()`),
      'base64',
    );

  test('the pictures that stand in for photographs are pictures', async () => {
    const page = await newPage();

    const sizes = [
      await painted(page, 'png', drawnPicture('the fuse')),
      await painted(page, 'jpeg', drawnJpeg()),
      await painted(page, 'gif', drawnGif(['words'])),
      await painted(page, 'webp', drawnWebp(['EXIF'], exifWithPlace())),
    ].map((shown) => shown.split(' ')[0]);

    expect(sizes).toEqual(['120x90', '8x8', '1x1', '1x1']);
  });

  test('a photo bare of its place looks as before, turned as it was', async () => {
    const page = await newPage();
    const plain = await written(page, 'jpeg');
    const segment = exifSegment(exifWithPlace(6));
    const placed = Buffer.concat([plain.subarray(0, 2), segment, plain.subarray(2)]);

    const bare = barePicture(placed);

    expect(Buffer.from(bare).includes('PLACE')).toBe(false);
    const shown = await painted(page, 'jpeg', bare);
    expect(shown.startsWith('16x24 ')).toBe(true);
    expect(shown).toBe(await painted(page, 'jpeg', placed));
  });

  test.each(['png', 'webp'])(
    'a %s that the browser wrote is taken, and is the same when bare',
    async (kind) => {
      const page = await newPage();
      const bytes = await written(page, kind);

      const bare = barePicture(bytes);

      expect(pictureOf(bytes).kind).toBe('good');
      expect(await painted(page, kind, bare)).toBe(await painted(page, kind, bytes));
    },
  );
});
