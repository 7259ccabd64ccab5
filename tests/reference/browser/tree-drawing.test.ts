import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { treeSvg } from '../../../src/core/drawing/tree-svg.ts';
import { shippedTrees } from '../../helpers/library.ts';
import { absent, isInstalled, startBrowser, type Browser, type BrowserPage } from './browser.ts';

const skipped = isInstalled ? '' : ` (${absent})`;

/** What a browser, which sets the text itself, finds out of place in the drawing on its page. */
const misplaced = `(() => {
  const boxes = [...document.querySelectorAll('svg rect')].map((box) => box.getBBox());
  const texts = [...document.querySelectorAll('svg text')].map((text) => ({ words: text.textContent, at: text.getBBox() }));
  const overRight = ({ at }) => {
    const middle = at.y + at.height / 2;
    return boxes.some(({ x, y, width, height }) =>
      at.x >= x && at.x < x + width && middle > y && middle < y + height && at.x + at.width > x + width - 1);
  };
  const meets = (one, other) =>
    one.at.x < other.at.x + other.at.width - 1 && other.at.x < one.at.x + one.at.width - 1 &&
    one.at.y < other.at.y + other.at.height - 3 && other.at.y < one.at.y + one.at.height - 3;
  return {
    texts: texts.length,
    overRight: texts.filter(overRight).map(({ words }) => words),
    overlapping: texts.filter((one, index) => texts.slice(index + 1).some((other) => meets(one, other))).map(({ words }) => words),
  };
})()`;

describe.skipIf(!isInstalled)(`drawn trees measured in Chromium${skipped}`, () => {
  let browser: Browser;
  let page: BrowserPage;
  beforeAll(async () => {
    browser = await startBrowser();
    page = await browser.newPage();
    await page.goto('about:blank');
  }, 60_000);
  afterAll(async () => browser.close());

  const show = (svg: string) =>
    page.evaluate(`document.body.innerHTML = ${JSON.stringify(svg)}; 0`);

  test.each(shippedTrees().map((tree) => [tree.id, tree] as const))(
    'no text of %s crosses its box or another text',
    async (_, tree) => {
      await show(treeSvg(tree));
      const found = await page.evaluate<{ texts: number }>(misplaced);

      expect(found).toEqual({ texts: found.texts, overRight: [], overlapping: [] });
      expect(found.texts).toBeGreaterThan(Object.keys(tree.checks).length);
    },
    20_000,
  );

  test('a text that is too long for its box is found', async () => {
    const box = '<rect x="10" y="10" width="40" height="20"/>';
    await show(`<svg>${box}<text x="14" y="24">much too long for it</text></svg>`);

    expect(await page.evaluate(misplaced)).toMatchObject({ overRight: ['much too long for it'] });
  });
});
