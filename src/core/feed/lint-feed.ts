import type { Tell } from '../problem.ts';
import { uncertaintyOf } from '../tree/judge.ts';
import { edgesOf, limitsOf } from '../tree/limits.ts';
import type { Check, Reading, Tree } from '../tree/model.ts';
import type { CheckFeed, Feed } from '../tree/feed-model.ts';
import { showNumber } from '../trade/units/units.ts';
import { typicalReading } from './evidence.ts';
import { makeMemo, type Memo } from './one-fault.ts';
import { pathsOf } from './fitted.ts';

type Place = {
  readonly tree: Tree;
  readonly check: Check;
  readonly path: string;
  readonly reading: Reading;
  readonly read: CheckFeed;
  readonly circuit: { readonly feed: Feed; readonly memo: Memo };
  readonly tell: Tell;
};

/** Limits that the circuit of the feed path contradicts. The names in the feed must have been checked. */
export function lintFeed(tree: Tree, tell: Tell): void {
  if (tree.feed === undefined) return;
  const [paths, memo] = [pathsOf(tree.feed, {}), makeMemo()];
  for (const [id, check] of Object.entries(tree.checks)) {
    const { reading, feed: read } = check;
    if (reading === undefined || read === undefined) continue;
    const circuit = { feed: paths(check.when), memo };
    const place = { tree, check, path: `checks.${id}`, reading, read, circuit, tell };
    if (lintUnit(place)) {
      lintSound(place);
      lintFaults(place);
    }
  }
}

const amount = (value: number, { unit }: Reading): string =>
  `${showNumber(Number(value.toPrecision(4)), 6)} ${unit}`;

/** Units in which the circuit is worked out. */
const units = { volts: 'V', ohms: 'ohm' } as const;

/** Whether the limits are in the unit that the circuit gives; told where they are not. */
function lintUnit({ path, reading, read, tell }: Place): boolean {
  const unit = units[read.reads];
  if (reading.unit === unit) return true;
  tell({
    code: 'feed-unit',
    path: `${path}.reading.unit`,
    value: reading.unit,
    message: `The feed path gives ${unit} here, and the limits are in ${reading.unit}.`,
    mend: `Write the unit and the limits in ${unit}.`,
  });
  return false;
}

/** The healthy band holds what a sound vehicle shows. */
function lintSound({ check, path, reading, read, circuit, tell }: Place): void {
  const shown = typicalReading(circuit, read, undefined);
  const [healthy] = check.results;
  if (shown === undefined || healthy === undefined) return;
  const { from, below } = edgesOf(healthy);
  if (shown >= from && shown < below) return;
  tell({
    code: 'band-against-circuit',
    path: `${path}.results[0]`,
    value: healthy.id,
    message: `On a sound vehicle the circuit gives ${amount(shown, reading)} here, which is not "${healthy.label}".`,
    mend: 'Mend the limits or the circuit; a switch on the span must be named in the "load" of the check.',
  });
}

/** A limit on the very value of a fault parts nothing: the meter's error puts it on either side. */
function lintFaults({ tree, check, path, reading, read, circuit, tell }: Place): void {
  const sound = typicalReading(circuit, read, undefined);
  for (const [id, cause] of Object.entries(tree.causes)) {
    const shown = typicalReading(circuit, read, cause);
    if (shown === undefined || cause.fault === undefined) continue;
    const error = uncertaintyOf(reading, shown);
    // What the fault does not move is told of the sound vehicle.
    if (sound !== undefined && Math.abs(shown - sound) <= error) continue;
    check.results.forEach((result, index) => {
      const limit = limitsOf({ from: result.from }).find((one) => Math.abs(one - shown) <= error);
      if (limit !== undefined)
        tell({
          code: 'limit-on-fault',
          path: `${path}.results[${index}].from`,
          value: String(limit),
          message: `"${cause.name}" (${id}) usually reads ${amount(shown, reading)} here: within the meter's error of this limit.`,
          mend: 'Move the limit away from it, so that one result shows the cause.',
        });
    });
  }
}
