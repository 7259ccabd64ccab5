import type { Tell } from '../problem.ts';
import { exists } from '../tree/fit.ts';
import { edgesOf } from '../tree/limits.ts';
import type { Check, Reading, Tree } from '../tree/model.ts';
import type { CheckFeed, Feed } from '../tree/feed-model.ts';
import { showNumber } from '../trade/units/units.ts';
import { typicalReading } from './evidence.ts';
import { makeMemo, type Memo } from './one-fault.ts';
import { feedFor } from './path.ts';

type Place = {
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
  const circuit = { feed: feedFor(tree.feed, (when) => exists(when, {})), memo: makeMemo() };
  for (const [id, check] of Object.entries(tree.checks)) {
    const { reading, feed: read } = check;
    if (reading === undefined || read === undefined) continue;
    lintSound({ check, path: `checks.${id}`, reading, read, circuit, tell });
  }
}

const amount = (value: number, { unit }: Reading): string =>
  `${showNumber(Number(value.toPrecision(4)), 6)} ${unit}`;

/** Units in which the circuit is worked out. */
const units = { volts: 'V', ohms: 'ohm' } as const;

/** The healthy band holds what a sound vehicle shows. */
function lintSound({ check, path, reading, read, circuit, tell }: Place): void {
  const unit = units[read.reads];
  if (reading.unit !== unit) {
    tell({
      code: 'feed-unit',
      path: `${path}.reading.unit`,
      value: reading.unit,
      message: `The feed path gives ${unit} here, and the limits are in ${reading.unit}.`,
      mend: `Write the unit and the limits in ${unit}.`,
    });
    return;
  }
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
