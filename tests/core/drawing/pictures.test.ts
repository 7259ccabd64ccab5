import fc from 'fast-check';
import { expect, test } from 'vitest';
import { fitText, textWidth } from '../../../src/core/drawing/fit-text.ts';
import { suspectRows, type SuspectRows } from '../../../src/core/drawing/suspect-rows.ts';
import { suspectsSvg } from '../../../src/core/drawing/suspects-svg.ts';
import { waySteps, type WayStep } from '../../../src/core/drawing/way-steps.ts';
import { waySvg } from '../../../src/core/drawing/way-svg.ts';
import { beliefHistory } from '../../../src/core/reason/history/belief-history.ts';
import { complaintsOf } from '../../../src/core/session/complaints.ts';
import type { Story } from '../../../src/core/session/story.ts';
import { hostileText } from '../../helpers/hostile.ts';
import { oddStory } from '../../helpers/odd-story.ts';
import { after } from '../../helpers/story.ts';
import { xmlTrouble } from '../../helpers/xml.ts';

const walked = after([
  { do: 'find', check: 'lamp', result: 'dark' },
  { do: 'find', check: 'look', result: 'whole' },
  { do: 'find', check: 'volts', reading: '0.2' },
  { do: 'condemn', cause: 'wire' },
  { do: 'repair', cause: 'wire', text: 'spliced' },
  { do: 'prove', result: 'lit' },
]).story;

const step = (text: string, change: Partial<WayStep> = {}): WayStep => ({
  n: 1,
  kind: 'check',
  title: text,
  taken: text,
  trace: '',
  checks: 1,
  healthy: false,
  own: true,
  branches: [{ label: text, leads: text }],
  ...change,
});

const elementsOf = (svg: string): readonly string[] =>
  [...svg.matchAll(/<([a-z]+)/g)].map(([, name = '']) => name);

test('the way tells each check, what it showed, and where it would have led otherwise', () => {
  const steps = waySteps(walked);

  expect(steps.map(({ kind, title, taken }) => [kind, title, taken])).toEqual([
    ['check', 'Does the lamp light?', 'it stays dark'],
    ['check', 'Is the fuse whole?', 'whole'],
    ['check', 'Volts at the lamp', '0.2 V · under 2 V'],
    ['repair', 'Wire broken', 'spliced'],
    ['proof', 'Does the lamp light?', 'it lights'],
  ]);
  expect(steps[1]?.branches).toEqual([{ label: 'burnt', leads: 'Fuse burnt' }]);
});

test('a check that the tree did not lead to is told as chosen', () => {
  const { story } = after([
    { do: 'find', check: 'lamp', result: 'dark' },
    { do: 'find', check: 'volts', reading: '0.2' },
  ]);

  expect(waySteps(story).map(({ own }) => own)).toEqual([true, false]);
});

test('a long way leaves its middle out and says how much', () => {
  const steps = Array.from({ length: 500 }, () => step('x'));

  const svg = waySvg('long', steps);

  expect(svg).toContain('460 steps are left out here');
  expect(svg.match(/>500</)).not.toBeNull();
});

/** The suspects of each complaint of a story that has any. */
const suspectsOf = (story: Story): readonly SuspectRows[] =>
  complaintsOf(story).flatMap((complaint) => {
    const suspects = suspectRows(story, beliefHistory(story), complaint);
    return suspects === undefined ? [] : [suspects];
  });

test('each suspect is drawn at its own chance, however much they come to together', () => {
  const story = oddStory('contradiction');
  const history = beliefHistory(story);
  const [suspects] = suspectsOf(story);
  const highest = Math.max(...(history.at(-1)?.after?.values() ?? []));

  const drawn = suspects?.rows.map(({ chances }) => chances.at(-1) ?? 0) ?? [];
  expect(Math.max(...drawn)).toBe(highest);
  expect(highest).toBeGreaterThan(0.9);
  const sums = suspects?.moments.map((_, at) =>
    suspects.rows.reduce((all, { chances }) => all + (chances[at] ?? 0), 0),
  );
  expect(Math.max(...(sums ?? []))).toBeGreaterThan(1);
});

test('a job of two complaints has the suspects of each, with what was mended among its own', () => {
  const each = suspectsOf(oddStory('two complaints'));

  expect(each).toHaveLength(2);
  const mended = each.map(({ rows }) => rows.filter(({ done }) => done === 'mended'));
  expect(mended.map((rows) => rows.map(({ name }) => name))).toEqual([[], ['The starter motor']]);
  expect(each.map(({ proved }) => proved)).toEqual([false, true]);
});

test('what was tried and did not cure stays in the picture', () => {
  const [suspects] = suspectsOf(oddStory('guess'));

  expect(suspects?.rows.filter(({ done }) => done !== undefined)).toHaveLength(3);
  expect(suspects?.moments.filter(({ kind }) => kind === 'repair')).toHaveLength(3);
});

test('both pictures are well-formed, 600 wide, and say what they show', () => {
  const pictures = [
    waySvg('The way', waySteps(walked)),
    ...suspectsOf(walked).map((suspects) => suspectsSvg('The suspects', suspects)),
  ];
  expect(pictures).toHaveLength(2);

  for (const svg of pictures) {
    expect(xmlTrouble(svg)).toBeUndefined();
    expect(svg).toMatch(
      /^<svg xmlns="http:\/\/www.w3.org\/2000\/svg" class="droplight" width="600" /,
    );
    expect(elementsOf(svg).slice(0, 3)).toEqual(['svg', 'title', 'desc']);
  }
});

test('the same story gives the same bytes', () => {
  expect(waySvg('x', waySteps(walked))).toBe(waySvg('x', waySteps(walked)));
});

test('hostile text stays text in a picture', () => {
  const plain = elementsOf(waySvg('x', [step('x')]));
  fc.assert(
    fc.property(hostileText, (text) => {
      const way = waySvg(text, [step(text)]);
      const bands = suspectsSvg(text, {
        moments: [{ label: text, kind: 'start' }],
        rows: [{ name: text, kind: 'cause', done: 'mended', chances: [0.5] }],
        proved: true,
      });

      expect(xmlTrouble(way)).toBeUndefined();
      expect(xmlTrouble(bands)).toBeUndefined();
      expect(new Set(elementsOf(way))).toEqual(new Set(plain));
    }),
    { seed: 20_260_411, numRuns: 1000 },
  );
});

test('no line of a box is wider than the box', () => {
  fc.assert(
    fc.property(hostileText, fc.integer({ min: 40, max: 300 }), (text, width) => {
      const lines = fitText(text, { width, lines: 3 });

      expect(lines.length).toBeLessThanOrEqual(3);
      // Rounding of doubles only.
      for (const line of lines) expect(textWidth(line)).toBeLessThanOrEqual(width + 1e-6);
    }),
    { seed: 20_260_411, numRuns: 1000 },
  );
});

test.each([
  ['an element that is not closed', '<svg><g></svg>'],
  ['a bare ampersand', '<svg>a & b</svg>'],
  ['a control character', '<svg>a\u0001b</svg>'],
  ['an attribute twice', '<svg a="1" a="2"/>'],
  ['two roots', '<svg/><svg/>'],
  ['text after the root', '<svg/>x'],
])('the reader of XML sees %s', (_, text) => {
  expect(xmlTrouble(text)).toBeDefined();
});

/** The texts of a picture: where they begin, how large and how wide they are. */
const textsOf = (svg: string) =>
  [...svg.matchAll(/<text ([^>]*)>([^<]*)<\/text>/g)].map(([, signs = '', words = '']) => {
    const size = Number(/font-size="([\d.]+)"/.exec(signs)?.[1] ?? 12);
    const weight = signs.includes('bold') ? 'bold' : 'plain';
    return {
      from: Number(/x="([\d.]+)"/.exec(signs)?.[1]),
      to: Number(/x="([\d.]+)"/.exec(signs)?.[1]) + textWidth(words, size, weight),
      words,
    };
  });

test('what was done stays inside its box, in the bold face too', () => {
  const did = 'points and condenser renewed, gap set, and wwwwwwwww mmmmmmmm at the end';
  const svg = waySvg('The way', [
    step('Points pitted', { kind: 'repair', taken: did, branches: [] }),
  ]);
  // The box is 296 wide and begins at 52; its inner line stands 3 inside.
  const inBox = textsOf(svg).filter(({ from }) => from === 66);

  expect(inBox.length).toBeGreaterThan(1);
  expect(inBox.filter(({ to }) => to > 52 + 296 - 3 - 4)).toEqual([]);
});

/** The foot of a picture of the way. */
const footOf = (steps: readonly WayStep[]): string =>
  textsOf(waySvg('The way', steps))
    .filter(({ from }) => from === 18)
    .map(({ words }) => words)
    .slice(1)
    .join(' ');

const look = (change: Partial<WayStep>): WayStep =>
  step('A look', { healthy: true, branches: [], ...change });

test('the foot tells the signs that are drawn, and no other', () => {
  expect(footOf([look({})])).not.toMatch(/Dashed|Double|Thick|Faded/);
  expect(footOf([look({ healthy: false })])).toContain('Thick bar');
  expect(footOf([look({ branches: [{ label: 'dark', leads: '' }] })])).toMatch(
    /could have shown\./,
  );
  expect(footOf([look({ branches: [{ label: 'dark', leads: 'volts' }] })])).toContain(
    'could have shown, and where that leads.',
  );
  const long = { label: 'dark', leads: 'a very long step that will never fit beside its label' };
  expect(footOf([look({ branches: [long, { label: 'lit', leads: 'stop' }] })])).toContain(
    'and where there is room, where that leads.',
  );
});
