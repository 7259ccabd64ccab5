import { expect, test } from 'vitest';
import { believe } from '../../../../src/core/reason/belief/posterior.ts';
import { inputFrom } from '../../../../src/core/reason/history/from-story.ts';
import {
  chancesAtFirst,
  beliefHistory,
  weighedFirst,
  weighedLast,
} from '../../../../src/core/reason/history/belief-history.ts';
import type { Action } from '../../../../src/core/session/action.ts';
import type { Event } from '../../../../src/core/session/event.ts';
import { fold } from '../../../../src/core/session/fold.ts';
import { after, headerFor, stampAt } from '../../../helpers/story.ts';

const walk: readonly Action[] = [
  { do: 'find', check: 'lamp', result: 'dark' },
  { do: 'find', check: 'look', result: 'whole' },
  { do: 'find', check: 'volts', reading: '0.2' },
  { do: 'repair', cause: 'wire' },
  { do: 'prove', result: 'lit' },
];

test('after every step the history holds what the belief of the story up to there is', () => {
  const { story, events, header } = after(walk);

  for (const { n, after: chances } of beliefHistory(story)) {
    const upTo = fold(
      header,
      events.filter((event) => event.n <= n),
    );
    const made = inputFrom(upTo);
    const belief = made.kind === 'good' ? believe(made.value) : made;
    if (made.kind === 'bad' || belief.kind === 'bad') throw new Error('no belief');
    const ids = made.value.model.causes.map(({ id }) => id);
    expect([...(chances ?? [])]).toEqual(ids.map((id, index) => [id, belief.value.chances[index]]));
  }
});

test('each step begins where the one before it ended', () => {
  const { story } = after(walk);
  const history = beliefHistory(story);

  expect(history[0]?.before).toEqual(chancesAtFirst(story));
  for (const [index, step] of history.slice(1).entries())
    expect(step.before).toBe(history[index]?.after);
});

test('a repair leaves its cause at nothing', () => {
  const { story } = after(walk);

  const repaired = beliefHistory(story).find(({ kind }) => kind === 'repair');
  expect(repaired?.after?.get('wire')).toBe(0);
});

test('of a very long session the middle is not weighed', () => {
  const events = Array.from({ length: 400 }, (_, index): Event => ({
    n: index + 1,
    ...stampAt(index % 600),
    kind: 'found',
    check: 'look',
    result: index % 2 === 0 ? 'whole' : 'burnt',
  }));

  const history = beliefHistory(fold(headerFor(), events));

  expect(history).toHaveLength(weighedFirst + weighedLast);
  expect(history.at(-1)?.n).toBe(400);
});
