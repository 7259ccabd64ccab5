import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { picturesOf } from '../../../src/core/account/pictures.ts';
import { beliefHistory } from '../../../src/core/reason/history/belief-history.ts';
import { oddSessions } from '../../helpers/odd-sessions.ts';
import { oddStory } from '../../helpers/odd-story.ts';
import { absent, isInstalled, startBrowser, type Browser, type BrowserPage } from './browser.ts';
import { misplaced } from './misplaced.ts';

const skipped = isInstalled ? '' : ` (${absent})`;
const folder = 'sessions/examples';

/** Every picture of the examples, and of the odd jobs, by its name. */
const pictures: readonly (readonly [name: string, svg: () => string])[] = [
  ...readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.svg'))
    .map((name) => [name, () => readFileSync(join(folder, name), 'utf8')] as const),
  ...Object.keys(oddSessions).flatMap((name) => {
    const story = oddStory(name);
    return picturesOf(story, beliefHistory(story)).map(
      ({ file, svg }) => [`${name}: ${file}`, () => svg] as const,
    );
  }),
];

describe.skipIf(!isInstalled)(`pictures of accounts measured in Chromium${skipped}`, () => {
  let browser: Browser;
  let page: BrowserPage;
  beforeAll(async () => {
    browser = await startBrowser();
    page = await browser.newPage();
    await page.goto('about:blank');
  }, 60_000);
  afterAll(async () => browser.close());

  test.each(pictures)(
    'no text of %s crosses its box or another text',
    async (_, svg) => {
      await page.evaluate(`document.body.innerHTML = ${JSON.stringify(svg())}; 0`);
      const found = await page.evaluate<{ texts: number }>(misplaced);

      expect(found).toEqual({ texts: found.texts, overRight: [], overlapping: [] });
      expect(found.texts).toBeGreaterThan(3);
    },
    20_000,
  );
});
