import fc from 'fast-check';
import { expect, test } from 'vitest';
import { writeUp } from '../../../src/core/account/account.ts';
import { ledgerOf } from '../../../src/core/account/blocks/ledger.ts';
import { withoutNames } from '../../../src/core/account/words/names.ts';
import type { AccountOptions } from '../../../src/core/account/context.ts';
import type { Action } from '../../../src/core/session/action.ts';
import { fold } from '../../../src/core/session/fold.ts';
import { anchorsOf, linksOf, parseGfm, rawOf, tablesOf, typesOf } from '../../helpers/gfm.ts';
import { hostileText } from '../../helpers/hostile.ts';
import { after, headerFor } from '../../helpers/story.ts';
import { smallTree, smallTreeData } from '../../helpers/tree.ts';
import { xmlTrouble } from '../../helpers/xml.ts';

const record = { events: 9, passedOver: 0, link: 'ab'.repeat(32) };

const told = (actions: readonly Action[], options: AccountOptions = {}): string =>
  writeUp(after(actions).story, record, options).markdown;

const dark: Action = { do: 'find', check: 'lamp', result: 'dark' };
const whole: Action = { do: 'find', check: 'look', result: 'whole' };
const dead: Action = { do: 'find', check: 'volts', reading: '0.2' };
const mend = (text = 'spliced'): Action => ({ do: 'repair', cause: 'wire', text });

test('an open job is never said to have nothing left to do; a proven one only that nothing is noted', () => {
  expect(told([dark])).not.toMatch(/still to do|nothing was left/i);
  expect(told([dark])).toContain('Next in line: "Is the fuse whole?"');
  expect(told([dark, whole, dead, mend(), { do: 'prove', result: 'lit' }])).not.toMatch(
    /nothing was left/i,
  );
});

test('a clock that was set while the work went on is told, behind which event', () => {
  const { events } = after([dark, whole, dead]);
  const set = events.map((event) =>
    event.n < 3 ? event : { ...event, at: event.at.replace(/^\d{4}/, '2057') },
  );
  const text = (some: typeof events): string =>
    writeUp(fold(headerFor(), some), record, {}).markdown;

  expect(text(set)).toContain(
    'The clock of the machine was set while the work went on (after event 2)',
  );
  expect(text(events)).not.toContain('clock of the machine');
});

test('a finding that turns the search tells who leads now, and that shares do not add up', () => {
  const text = told([dark, whole]);

  expect(text).toContain(
    'To tell fuse burnt from wire broken, we asked "Is the fuse whole?": whole. Nearly all now spoke for wire broken (85 %). Several things can be wrong at once',
  );
});

test('a finding that settles the matter is followed by naming the cause', () => {
  const text = told([dark, whole, dead, { do: 'condemn', cause: 'wire' }]);

  expect(text).toContain('We named the cause: wire broken.');
});

test('a repair on a guess is called a guess', () => {
  expect(told([dark, { do: 'repair', cause: 'wire' }])).toContain(
    'Then wire broken was mended, on a guess (46 %), before any cause was named.',
  );
});

test('a repair that did not cure is no cause found', () => {
  const text = told([dark, mend(), { do: 'prove', result: 'dark' }]);

  expect(text).toContain('No cause is proven; what was found speaks most for fuse burnt');
  expect(text).toContain('Spliced, which did not cure it.');
  expect(text).toContain('The complaint was still there');
});

test('a correction is told honestly, with its reason', () => {
  const corrected = after([dark, whole, dead]).events.at(-1)?.n ?? 0;
  const text = told([
    dark,
    whole,
    dead,
    { do: 'correct', n: corrected, reading: '12.4', reason: 'Wrong terminal.' },
  ]);

  expect(text).toContain(
    'We had first written down 0.2 V, "under 2 V", and put it right afterwards: wrong terminal.',
  );
});

test('what was passed over is told with its reason', () => {
  const text = told([dark, { do: 'skip', check: 'look', reason: 'No light.' }]);

  expect(text).toContain('We passed over "Is the fuse whole?": no light.');
  expect(text).toContain('- Passed over: "Is the fuse whole?" (no light).');
});

test('what can maim stands in short before the story, and every caution in full once', () => {
  const text = told([dark, whole, dead, mend()]);

  expect(text.match(/It bites\. Keep clear\./g)).toHaveLength(1);
  expect(text.indexOf('Spark: It bites.')).toBeLessThan(text.indexOf('## How it went'));
  expect(text.match(/Hot metal: It burns\./g)).toHaveLength(1);
});

test('what makes it unsafe stands before everything else', () => {
  const text = told([dark, { do: 'follow-up', text: 'Brakes!', urgency: 'unsafe' }]);

  expect(text.split('\n\n')[1]).toBe('> **Caution: not to be driven yet.** Brakes!');
});

test.each([
  ['i', 'I noted'],
  ['we', 'we noted'],
  ['they', 'they noted'],
] as const)('in the voice %s it says "%s"', (voice, words) => {
  expect(told([{ do: 'note', text: 'Wet.' }, dark], { voice })).toMatch(new RegExp(words, 'i'));
});

test('a note that belongs to a finding stands at the end of its sentence, wherever that has a stop', () => {
  const { checks, ...rest } = smallTreeData();
  const [lit, ...others] = checks.lamp.results;
  const results = [lit, ...others.map((one) => ({ ...one, told: 'no. 3 stayed dark' }))];
  const tree = smallTree({ ...rest, checks: { ...checks, lamp: { ...checks.lamp, results } } });
  const { story } = after([dark, { do: 'note', text: 'No. 2 is lit.' }], headerFor(tree));

  expect(writeUp(story, record).markdown).toContain(': no. 3 stayed dark ("No. 2 is lit").');
});

test('a stranger reads no name of the vehicle or of its people, in the notes neither', () => {
  const { header, events } = after([
    dark,
    { do: 'note', text: 'JB says the orchard van leaks; JBs jack is out.' },
    { do: 'close', as: 'given-up', text: 'Orchard van towed by JB' },
  ]);
  const hidden = withoutNames({ header, events });

  const { markdown } = writeUp(fold(hidden.header, hidden.events), record, { audience: 'reader' });

  expect(markdown).not.toMatch(/orchard van|\bJB\b/i);
  expect(markdown).toContain('the mechanic says the vehicle leaks; JBs jack is out');
});

test('minutes go to what they ended in, and what did not cure is lost', () => {
  const { story } = after([dark, mend(), { do: 'prove', result: 'dark' }]);

  // One minute an event: found; access, standing (implied) and repaired; key (implied) and proved.
  expect(story.minutes).toBeGreaterThan(0);
  const ledger = ledgerOf(story);
  expect(Object.values(ledger).reduce((sum, minutes) => sum + minutes, 0)).toBeCloseTo(
    story.minutes,
    9,
  );
  expect(ledger.lost).toBeGreaterThan(0);
  expect(ledger.repairing).toBe(0);
});

test('front matter is one YAML block that no title can end', () => {
  const { story } = after([dark], {
    ...headerFor(),
    vehicle: { name: 'a"\n---\nb: c', facts: {} },
  });

  const { markdown } = writeUp(story, record, { frontMatter: true });

  const [, block = ''] = markdown.split('---\n');
  expect(JSON.parse(/^title: (.*)$/m.exec(block)?.[1] ?? '')).toBe('a" --- b: c: No light');
  expect(
    block
      .trim()
      .split('\n')
      .map((line) => line.split(':')[0]),
  ).toEqual(
    'title date vehicle complaint cause tried proven status parts cost minutes tools'.split(' '),
  );
});

test('the same session gives the same bytes', () => {
  const actions = [dark, whole, dead, mend()];

  expect(told(actions, { pictures: 'x.pictures' })).toBe(told(actions, { pictures: 'x.pictures' }));
});

test('hostile text in every field stays text in the account and in its pictures', () => {
  const plain = new Set(typesOf(parseGfm(told(everywhere('plain'), { pictures: 'p' }))));
  const known = new Set([...plain, 'link', 'image']);
  fc.assert(
    fc.property(hostileText, (text) => {
      const header = {
        ...headerFor(),
        who: text.slice(0, 200),
        vehicle: { name: text.slice(0, 500), facts: {} },
      };
      const { markdown, pictures } = writeUp(after(everywhere(text), header).story, record, {
        pictures: 'p',
      });
      const tree = parseGfm(markdown);

      expect(rawOf(tree)).toEqual([]);
      expect(typesOf(tree).filter((type) => !known.has(type))).toEqual([]);
      for (const rows of tablesOf(tree)) expect(new Set(rows).size).toBe(1);
      const anchors = anchorsOf(tree);
      const bad = linksOf(tree).filter(
        ({ type, url }) =>
          type !== 'image' && !anchors.includes(url) && !/^(https?:|mailto:)/.test(url),
      );
      expect(bad).toEqual([]);
      expect(
        linksOf(tree)
          .filter(({ type }) => type === 'image')
          .map(({ url }) => url),
      ).toEqual(['p/suspects.svg', 'p/way.svg']);
      for (const svg of Object.values(pictures)) expect(xmlTrouble(svg)).toBeUndefined();
    }),
    { seed: 20_260_411, numRuns: 150 },
  );
});

/** A walk with the text in every place that a person can type. */
function everywhere(text: string): readonly Action[] {
  const said = text.trim() === '' ? 'x' : text.slice(0, 20_000);
  return [
    dark,
    { do: 'note', text: said },
    { do: 'photo', file: `${said}!`, caption: said },
    { do: 'skip', check: 'look', reason: said },
    { do: 'part-off', part: said, where: said },
    { do: 'repair', cause: 'fuse', text: said, parts: [said, said], cost: said },
    { do: 'prove', result: 'dark' },
    { do: 'timer', label: said, minutes: 1 },
    { do: 'follow-up', text: said, urgency: 'unsafe' },
    { do: 'close', as: 'given-up', text: said },
  ];
}
