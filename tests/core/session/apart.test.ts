import { expect, test } from 'vitest';
import type { Action } from '../../../src/core/session/action.ts';
import {
  apartName,
  apartNow,
  bagsOf,
  nextBag,
  photosOfPart,
  refitOrder,
} from '../../../src/core/session/apart/apart.ts';
import { decide } from '../../../src/core/session/rules/rules.ts';
import { fold } from '../../../src/core/session/fold.ts';
import { after } from '../../helpers/story.ts';

const off = (part: string, more = {}): Action => ({ do: 'part-off', part, ...more });
const world = { tree: () => undefined };
const storyAfter = (...actions: readonly Action[]) => after(actions).story;
const names = (story: ReturnType<typeof storyAfter>, of = apartNow) =>
  of(story).map((thing) => apartName(story, thing));

test('what is apart stands in the order it came off, and goes back aids first, the ground lead last', () => {
  const story = storyAfter(
    { do: 'standing', battery: 'disconnected' },
    off('carburetor'),
    { do: 'aid-on', aid: 'jumper' },
    { do: 'access', open: 'dash' },
    off('wheel', { bag: 'none' }),
  );

  expect(names(story)).toEqual([
    'carburetor (bag 1)',
    'jumper (still on)',
    'Dash panel off',
    'wheel',
    'battery lead',
  ]);
  expect(names(story, refitOrder)).toEqual([
    'jumper (still on)',
    'wheel',
    'Dash panel off',
    'carburetor (bag 1)',
    'battery lead',
  ]);
});

test('a bag is never given twice, though its part was taken back or is on again', () => {
  const story = storyAfter(
    off('a'),
    off('b'),
    { do: 'part-on', n: 1 },
    { do: 'correct', n: 2, withdraw: true },
  );

  expect(nextBag(story)).toBe(3);
  expect(bagsOf(story)).toEqual({ given: 1, empty: 1 });
  // A bag that was put down by mistake is free for who types it.
  expect(decide(story, off('c', { bag: 2 }), world)).toMatchObject({ kind: 'accepted' });
  expect(decide(story, off('c', { bag: 1 }), world)).toMatchObject({
    kind: 'refused',
    problem: { code: 'bag-used' },
  });
});

test('of two parts with one name each goes back by its number', () => {
  const story = storyAfter(off('wheel'), off('wheel'));

  expect(decide(story, { do: 'part-on', part: 'wheel' }, world)).toMatchObject({
    kind: 'refused',
    problem: { code: 'several-apart', mend: 'Give n: wheel (n 1), wheel (n 2).' },
  });
  expect(storyAfter(off('wheel'), off('wheel'), { do: 'part-on', n: 1 }).partsOff).toMatchObject([
    { n: 2, bag: 2 },
  ]);
});

test('of two aids with one name each comes off by its number', () => {
  const on: Action = { do: 'aid-on', aid: 'clamp' };

  expect(storyAfter(on, on, { do: 'aid-off', n: 2 }).aidsOn).toEqual([{ n: 1, aid: 'clamp' }]);
  expect(decide(storyAfter(on, on), { do: 'aid-off', aid: 'clamp' }, world)).toMatchObject({
    problem: { code: 'several-apart' },
  });
});

test('out of order is taken, and told in one line', () => {
  const story = storyAfter(off('air cleaner'), off('carburetor'));

  expect(decide(story, { do: 'part-on', n: 1 }, world)).toMatchObject({
    kind: 'accepted',
    warnings: ['Out of order: carburetor (bag 2) came off after it, and goes back first.'],
  });
  expect(decide(story, { do: 'part-on', n: 2 }, world)).toMatchObject({ warnings: [] });
});

test('a record of before bags puts a part back by its name', () => {
  const { header, events } = after([off('bezel')]);
  const [first] = events;
  if (first === undefined) throw new Error('one event was made');
  const old = [
    { n: 1, kind: 'part-off', part: 'bezel' },
    { n: 2, kind: 'part-on', part: 'bezel' },
  ] as const;
  const stamp = { at: first.at, run: first.run, mono: first.mono, up: first.up };

  expect(
    fold(
      header,
      old.map((one) => ({ ...stamp, ...one })),
    ).partsOff,
  ).toEqual([]);
});

test('photographs of a part are those that say so', () => {
  const photo = { do: 'photo', file: 'a.jpg', caption: 'hoses' } as const;
  const story = storyAfter(off('carburetor'), { ...photo, about: 'part:1' }, photo);

  expect(photosOfPart(story, 1)).toBe(1);
});
