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

/** The paragraphs of an account before its first heading. */
function openingOf(events: readonly Event[]): readonly string[] {
  const record = { events: events.length, passedOver: 0, link: 'ab'.repeat(32) };
  const { markdown } = writeUp(fold(headerFor(), events), record);
  const [, ...paragraphs] = (markdown.split('\n## ')[0] ?? '').trim().split('\n\n');
  return paragraphs;
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
    "It came in with this complaint: the lamp stays dark. It was wire broken (chafed behind the dash). Spliced. After that the complaint's own test passed.",
  ]);
});

test.each<readonly [name: string, actions: readonly Action[], words: string]>([
  [
    'a repair without its proof is a suspicion',
    [dark, mend],
    "The suspicion fell on wire broken. Spliced. It is not proven: the complaint's own test was not repeated after the last repair.",
  ],
  [
    'a named cause that was not mended is told as such',
    [dark, whole, { do: 'condemn', cause: 'wire' }],
    'What was found led to wire broken, not mended yet. Nothing was repaired.',
  ],
  [
    'with nothing named the likeliest is told with its chance',
    [dark, whole],
    'No cause was proven; what was found speaks most for wire broken (85 %). Nothing was repaired.',
  ],
  ['with nothing found nothing is guessed', [], 'No cause was found for it. Nothing was repaired.'],
])('%s', (_, actions, words) => {
  expect(opening(...actions)).toEqual([
    `It came in with this complaint: the lamp stays dark. ${words}`,
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
  expect(paragraphs[1]).toMatch(
    /^On the same job another complaint was taken up: the lamp stays dark\./,
  );
});
