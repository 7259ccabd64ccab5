import fc from 'fast-check';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { wayOf } from '../../../src/core/account/outcome-steps.ts';
import { wayMermaid } from '../../../src/core/drawing/mermaid.ts';
import type { WayStep } from '../../../src/core/drawing/way-steps.ts';
import { waySvg } from '../../../src/core/drawing/way-svg.ts';
import { hostileText, hostileTexts } from '../../helpers/hostile.ts';
import { oddSessions } from '../../helpers/odd-sessions.ts';
import { oddStory } from '../../helpers/odd-story.ts';
import { xmlTrouble } from '../../helpers/xml.ts';
import { absent, mermaidParse, xmlProblems } from './mermaid.ts';

const folder = 'sessions/examples';
const examples = readdirSync(folder, { recursive: true, encoding: 'utf8' });
const pictures = examples.filter((name) => name.endsWith('.svg'));

const kinds = [
  'check',
  'passed over',
  'not told',
  'taken back',
  'healthy checks',
  'repair',
  'proof',
  'complaint',
  'back to the complaint',
  'another tree',
  'gap',
  'outcome',
] as const;

const steps = (text: string): readonly WayStep[] =>
  kinds.map((kind, n) => ({
    n,
    kind,
    title: text,
    taken: text,
    trace: text,
    checks: 1,
    healthy: true,
    own: true,
    branches: [{ label: text, leads: text }],
  }));

const skipped = mermaidParse === undefined ? ` (${absent})` : '';
const parse = async (text: string): Promise<unknown> => mermaidParse?.(text);
const parses = async (text: string): Promise<string> =>
  parse(text).then(
    () => 'parses',
    (error: unknown) => String(error),
  );

test.skipIf(mermaidParse === undefined)(`Mermaid sees what is no chart${skipped}`, async () => {
  expect(await parses('flowchart TD\n  s0["open')).not.toBe('parses');
});

test.skipIf(mermaidParse === undefined).each(Object.keys(oddSessions))(
  `the chart of the job "%s" parses with Mermaid's own parser${skipped}`,
  async (name) => {
    expect(await parses(wayMermaid(wayOf(oddStory(name))))).toBe('parses');
  },
);

test.skipIf(mermaidParse === undefined)(`hostile text parses as a label${skipped}`, async () => {
  for (const text of hostileTexts) expect(await parses(wayMermaid(steps(text)))).toBe('parses');
  await fc.assert(
    fc.asyncProperty(hostileText, async (text) => {
      expect(await parses(wayMermaid(steps(text)))).toBe('parses');
    }),
    { seed: 20_260_411, numRuns: 150 },
  );
});

test.skipIf(xmlProblems('<a/>') === undefined)(
  `a strict XML parser reads every picture${skipped}`,
  () => {
    expect(pictures.length).toBeGreaterThanOrEqual(8);
    for (const name of pictures)
      expect([name, xmlProblems(readFileSync(join(folder, name), 'utf8'))]).toEqual([name, []]);
  },
);

test.skipIf(xmlProblems('<a/>') === undefined)(
  `the strict parser and our own reader agree on hostile text${skipped}`,
  () => {
    fc.assert(
      fc.property(hostileText, (text) => {
        const svg = waySvg(text, steps(text));

        expect(xmlProblems(svg)).toEqual([]);
        expect(xmlTrouble(svg)).toBeUndefined();
      }),
      { seed: 20_260_411, numRuns: 500 },
    );
  },
);
