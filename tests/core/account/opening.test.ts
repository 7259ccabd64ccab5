import { expect, test } from 'vitest';
import { writeUp } from '../../../src/core/account/account.ts';
import type { Action } from '../../../src/core/session/action.ts';
import type { Event } from '../../../src/core/session/event.ts';
import { fold } from '../../../src/core/session/fold.ts';
import { after, headerFor, stampAt } from '../../helpers/story.ts';
import { smallShop, smallTree } from '../../helpers/tree.ts';

const dark: Action = { do: 'find', check: 'lamp', result: 'dark', acknowledged: true };
const whole: Action = { do: 'find', check: 'look', result: 'whole', acknowledged: true };
const mend: Action = { do: 'repair', cause: 'wire', text: 'Spliced.', acknowledged: true };
const lit: Action = { do: 'prove', result: 'lit', acknowledged: true };

/** The paragraphs of an account that tell of its complaints: those after the title, before the day it was begun. */
function openingOf(events: readonly Event[]): readonly string[] {
  const record = { events: events.length, passedOver: 0, link: 'ab'.repeat(32) };
  const { markdown } = writeUp(fold(headerFor(), events), record);
  const [, open, ...paragraphs] = (markdown.split('\n## ')[0] ?? '').trim().split('\n\n');
  expect(open).toMatch(/^Unfinished/);
  return paragraphs.slice(
    0,
    paragraphs.findIndex((text) => text.startsWith('The work was begun')),
  );
}

const opening = (...actions: readonly Action[]) => openingOf(after(actions).events);

test('the opening tells complaint, cause and cure in sentences, with no row of labels', () => {
  expect(
    opening(
      dark,
      whole,
      { do: 'condemn', cause: 'wire', text: 'chafed behind the dash' },
      mend,
      lit,
    ),
  ).toEqual([
    'The complaint was "no light". In its own test ("Does the lamp light?") "it stays dark". The cause: wire broken ("chafed behind the dash"). Spliced. Proved by the complaint\'s own test: it lights.',
  ]);
});

test.each<readonly [name: string, actions: readonly Action[], words: string]>([
  [
    'a repair without its proof is a suspicion',
    [dark, mend],
    'Suspected wire broken (46 %). Spliced. It is not proven: the complaint\'s own test was not repeated after the last repair. Next in line: "Does the lamp light?"',
  ],
  [
    'a named cause that was not mended is told as such',
    [dark, whole, { do: 'condemn', cause: 'wire' }],
    'What was found led to wire broken, not mended yet. Nothing was repaired. Next in line: volts at the lamp.',
  ],
  [
    'with nothing named the likeliest is told with its chance, what is cleared, and what comes next',
    [dark, whole],
    'No cause is proven; what was found speaks most for wire broken (85 %). Nothing was repaired. Next in line: volts at the lamp.',
  ],
])('%s', (_, actions, words) => {
  expect(opening(...actions)).toEqual([
    `The complaint was "no light". In its own test ("Does the lamp light?") "it stays dark". ${words}`,
  ]);
});

test('each complaint of a job has its own: a repair of the second proves nothing of the first', () => {
  const other = { ...smallTree(), id: 'other', title: 'The other lamp' };
  const legAt = (events: readonly Event[]): readonly Event[] => {
    const n = events.length + 1;
    const leg = {
      kind: 'leg' as const,
      tree: 'other',
      complaint: {},
      whole: other,
      shop: smallShop,
    };
    return [...events, { n, ...stampAt(n), ...leg }];
  };
  const first = legAt(after([dark, whole]).events);
  const n = first.length + 1;
  const found = after([dark]).events.map((event, index) => ({ ...event, n: n + index }));

  const paragraphs = openingOf([...first, ...found]);
  expect(paragraphs).toHaveLength(2);
  expect(paragraphs[0]).toContain(
    'Nothing was repaired for it before the next complaint was taken up.',
  );
  expect(paragraphs[1]).toMatch(/^A second complaint came up on the same job, "the other lamp"\./);
});

test('a cause that nobody described is told as its check read it', () => {
  const dead: Action = { do: 'find', check: 'volts', reading: '0.2', acknowledged: true };

  expect(opening(dark, whole, dead, mend, lit)).toEqual([
    'The complaint was "no light". In its own test ("Does the lamp light?") "it stays dark". The cause: wire broken (volts at the lamp: 0.2 V). Spliced. Proved by the complaint\'s own test: it lights.',
  ]);
});

test('a repair noted with more minutes than the clock has is not told as less work', () => {
  const noted: Action = { ...mend, minutes: 90 };
  const record = { events: 4, passedOver: 0, link: 'ab'.repeat(32) };
  const { markdown } = writeUp(fold(headerFor(), after([dark, whole, noted, lit]).events), record);

  expect(markdown).toContain('; 90 minutes of work are noted for the repair.');
  expect(markdown).toContain('By the clock it took ');
});
