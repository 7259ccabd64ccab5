import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { treeSvg } from '../../../src/core/drawing/tree-svg.ts';
import { shippedTrees } from '../../helpers/library.ts';
import { absent, isInstalled, startBrowser, type Browser, type BrowserPage } from './browser.ts';
import { misplaced } from './misplaced.ts';

const skipped = isInstalled ? '' : ` (${absent})`;

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
