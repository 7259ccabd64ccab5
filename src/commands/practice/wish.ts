import { bad, good, type Parsed } from '../../core/problem.ts';
import type { Io } from '../io.ts';
import { wrongUse, type Given } from '../options.ts';
import type { Hidden } from './hidden.ts';
import { entryOf } from './set-file.ts';

/** A tree with its options, or one number of a set. */
export function wishFrom(io: Io, given: Given, use: string): Parsed<Hidden> {
  const set = given.text('set');
  if (set !== undefined) return fromSet(io, given, use);
  const [tree, ...more] = given.words;
  if (tree === undefined || more.length > 0 || given.text('number') !== undefined)
    return wrongUse('Practice wants one tree, or --set FILE with --number K.', use);
  const causes = given.texts('cause');
  if (given.flag('hard') && causes.length > 0)
    return bad({
      code: 'hard-and-cause',
      message: '--hard draws two faults, and --cause names them.',
      mend: 'Give one of the two; --cause may be given twice.',
    });
  return good({
    tree,
    seed: given.text('seed'),
    hard: given.flag('hard'),
    causes,
    facts: given.text('facts') ?? '',
    set: undefined,
  });
}

function fromSet(io: Io, given: Given, use: string): Parsed<Hidden> {
  const number = Number(given.text('number') ?? Number.NaN);
  const alone =
    given.words.length === 0 &&
    !given.flag('hard') &&
    given.text('seed') === undefined &&
    given.text('facts') === undefined &&
    given.texts('cause').length === 0;
  if (!alone || !Number.isInteger(number))
    return wrongUse('A set wants --number K, and says all else by itself.', use);
  return entryOf(io, given.text('set') ?? '', number);
}
