import { expect, test } from 'vitest';
import {
  agree,
  isSeveral,
  oneIn,
  startOf,
  subject,
  was,
  wordCount,
} from '../../../src/core/account/clauses/grammar.ts';

// English grammar: the verb agrees with the head noun, not with what stands behind a preposition.
test.each([
  ['the points', true],
  ['the coil', false],
  ["the battery's volts at rest", true],
  ['the drop across the points', false],
  ['the spark at a plug lead', false],
  ['the vacuum hoses and their fittings', true],
  ['both lamps', true],
  ['a bulb straight across the clamps', false],
  ['one of the leads', false],
  ['the loss on the ground side', false],
  ['the exhaust gas', false],
  ["the alternator's brushes", true],
  ['three terminals', true],
  ['the wheels, turned by hand', true],
  ['the bulbs swapped left to right', true],
  ['the carburetor, wiped and watched', false],
  ['the carburetor ten minutes after a hot stop', false],
  ['the engine turned without its plugs', false],
  ['the float needle that leaks', false],
  ['what still works', false],
  ['how the lamps answer to a wiggle', false],
])('%s is several: %s', (thing, several) => {
  expect(isSeveral(thing)).toBe(several);
  expect(agree([thing], was)).toBe(several ? 'were' : 'was');
});

test('several subjects want the second form', () => {
  expect(subject(['the coil', 'the rotor'])).toBe('the coil and the rotor were');
  expect(subject(['the coil'], ['has', 'have'])).toBe('the coil has');
});

test.each([
  [0.19, 'about one vehicle in five'],
  [0.083, 'about one vehicle in twelve'],
  [0.05, 'about one vehicle in 20'],
  [0.001, 'hardly one vehicle in fifty'],
])('a chance of %d as people say it', (chance, words) => {
  expect(oneIn(chance)).toBe(words);
});

test('sentences begin alike by their first word', () => {
  expect(startOf('At 10:59, to tell')).toBe(startOf('At noon'));
  expect(wordCount('It read 12.6 V, and held.')).toBe(6);
});
