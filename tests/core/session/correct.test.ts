import { describe, expect, test } from 'vitest';
import { asCorrected } from '../../../src/core/session/correct.ts';
import type { Event, Payload, UnknownEvent } from '../../../src/core/session/event.ts';
import { stampAt } from '../../helpers/story.ts';

const written = (...said: readonly Payload[]): readonly Event[] =>
  said.map((payload, index) => ({ n: index + 1, ...stampAt(index + 1), ...payload }));

const note = (text: string): Payload => ({ kind: 'noted', text });
const instead = (of: number, text: string): Payload => ({
  kind: 'corrected',
  of,
  to: { ...note(text) },
});

/** What counts of each event now, and which events corrected it. */
const now = (events: readonly (Event | UnknownEvent)[]) =>
  asCorrected(events).map(({ said, correctedBy }) => [
    said === undefined ? 'nothing' : said.kind === 'noted' ? said.text : said.kind,
    ...correctedBy,
  ]);

describe('corrections', () => {
  test('without any, everything counts as it was said', () => {
    expect(now(written(note('a'), note('b')))).toEqual([['a'], ['b']]);
  });

  test('a correction changes what counts and names itself', () => {
    expect(now(written(note('a'), instead(1, 'A')))).toEqual([['A', 2], ['corrected']]);
  });

  test('the last of several corrections counts', () => {
    expect(now(written(note('a'), instead(1, 'b'), instead(1, 'c')))[0]).toEqual(['c', 2, 3]);
  });

  test('a correction without words takes the event back', () => {
    expect(now(written(note('a'), { kind: 'corrected', of: 1 }))[0]).toEqual(['nothing', 2]);
  });

  test('a correction of a correction counts for the event first named', () => {
    expect(now(written(note('a'), instead(1, 'b'), instead(2, 'c')))[0]).toEqual(['c', 2, 3]);
  });

  test.each([
    ['an event that is not there', instead(9, 'x')],
    ['an event still to come', instead(3, 'x')],
    ['a note with what is no note', { kind: 'corrected', of: 1, to: { kind: 'found' } } as Payload],
  ])('a correction of %s changes nothing', (_, correction) => {
    expect(now(written(note('a'), correction, note('b')))).toEqual([['a'], ['corrected'], ['b']]);
  });

  test('a kind that is not known cannot be corrected and stays', () => {
    const unknown: UnknownEvent = { n: 1, ...stampAt(1), kind: 'unknown', was: 'smelled' };
    const events = [unknown, ...written(note('x'), instead(1, 'y')).slice(1)];

    expect(asCorrected(events)[0]).toEqual({ event: unknown, said: undefined, correctedBy: [] });
  });

  test('what was written stays as it was written', () => {
    const events = written(note('a'), instead(1, 'A'));
    const copy = structuredClone(events);

    const entries = asCorrected(events);

    expect(events).toEqual(copy);
    expect(entries.map(({ event }) => event)).toEqual(copy);
  });

  test('a correction that names itself changes nothing', () => {
    expect(now(written(note('a'), instead(2, 'x')))).toEqual([['a'], ['corrected']]);
  });
});
