import { mapValues } from '../../map-values.ts';
import type * as z from 'zod';
import type { Facts } from '../facts.ts';
import { Tree as FormatOne } from '../shapes.ts';
import { unlisted, type Cause, type Check, type Lead, type Result, type Tree } from '../model.ts';
import { withBranches } from './branches.ts';
import { bandWords, endsOf, labelWith, type Limits } from './bands.ts';
import { causeRow, complaintRow, isCertain, soundRow, usuallyBad } from './chances.ts';
import { valueFor } from './varying.ts';
import {
  Written,
  type Certain,
  type Shares,
  type WrittenCause,
  type WrittenCheck,
  type WrittenResult,
} from './written.ts';

/**
 * The tree of a file, as a vehicle with these facts has it: chances by position, bands with both
 * ends, one value where facts flip it. What the vehicle has not is still there: `fitTree` takes it
 * out. One of format 2 carries the file along, to be settled anew where more is known.
 */
export function settle(written: Written, facts: Facts): Tree {
  const { causes, checks: _checks, branches: _branches, ...rest } = written;
  return {
    ...rest,
    causes: mapValues(causes, (cause) => settleCause(cause, facts)),
    checks: mapValues(withBranches(written), (check, id) =>
      settleCheck(check, facts, {
        format: written.format,
        complaint: id === written.complaint.confirm,
      }),
    ),
    ...(written.format === 2 && { written }),
  };
}

/** The shape that a file of this format must have; of any other, that of the newest. */
export const modelFor = (value: unknown): z.ZodType<Written> =>
  typeof value === 'object' && value !== null && 'format' in value && value.format === 1
    ? FormatOne
    : Written;

/** The tree as its file has it, for whatever is written down. */
export const fileOf = (tree: Tree): Written => tree.written ?? tree;

function settleCause({ odds, repair, ...cause }: WrittenCause, facts: Facts): Cause {
  return {
    ...cause,
    odds: valueFor(odds, facts) ?? 0,
    repair: { ...repair, minutes: valueFor(repair.minutes, facts) ?? 0 },
  };
}

type Around = { readonly format: 1 | 2; readonly complaint: boolean };

function settleCheck(written: WrittenCheck, facts: Facts, around: Around): Check {
  const {
    how,
    healthy,
    minutes,
    limits: _limits,
    bands: _bands,
    sound: _sound,
    'shows-with': _showsWith,
    ...plain
  } = written;
  const results = settleResults(written, facts);
  const shown = healthy === undefined ? bandOfFirst(written, results) : valueFor(healthy, facts);
  return {
    ...plain,
    how: [...(valueFor<readonly string[]>(how, facts) ?? [])],
    ...(shown !== undefined && { healthy: shown }),
    minutes: valueFor(minutes, facts) ?? 0,
    results,
    ...settleChances(written, facts, around),
  };
}

/** What a sound vehicle shows where only the limits say it. */
function bandOfFirst({ limits, reading }: WrittenCheck, [first]: readonly Result[]) {
  return limits === undefined || reading === undefined || first === undefined
    ? undefined
    : bandWords(first, reading.unit);
}

function settleResults(check: WrittenCheck, facts: Facts): Result[] {
  const { results, limits, bands, reading } = check;
  const parted = limits === undefined ? undefined : valueFor<Limits>(limits, facts);
  const ids = results.map(({ id }) => id);
  const ends = parted === undefined ? undefined : endsOf(ids, parted, bands);
  return results.map(({ label, next, ...rest }): Result => {
    const band = ends?.get(rest.id);
    const named =
      band === undefined || reading === undefined
        ? (label ?? rest.id)
        : labelWith(label, band, reading.unit);
    return { ...rest, ...band, label: named, ...settleNext(next, facts) };
  });
}

/** A plain next, or the leads that hold by what is known before the plain one. */
function settleNext(next: WrittenResult['next'], facts: Facts): Pick<Result, 'next' | 'leads'> {
  if (next === undefined) return {};
  if (typeof next === 'string') return { next };
  const leads: Lead[] = [];
  for (const one of next) {
    if (typeof one === 'string') return { next: one, ...(leads.length > 0 && { leads }) };
    if ('if' in one) leads.push(one);
    else if (holds(one.when, facts)) return { next: one.go, ...(leads.length > 0 && { leads }) };
  }
  return leads.length > 0 ? { leads } : {};
}

/** Whether every fact is known and as wanted. */
const holds = (when: Readonly<Record<string, string | string[]>>, facts: Facts): boolean =>
  valueFor([{ when, is: true }], facts) === true &&
  Object.keys(when).every((fact) => facts[fact] !== undefined);

function settleChances(
  written: WrittenCheck,
  facts: Facts,
  { format, complaint }: Around,
): Pick<Check, 'background' | 'points'> {
  const results = written.results.map(({ id }) => id);
  const { sound, background: typed, feed } = written;
  const rows = Object.entries(written['shows-with'] ?? {});
  const said =
    sound === undefined
      ? format === 2 && !complaint && feed === undefined
        ? usuallyBad
        : undefined
      : valueFor<Shares | number>(sound, facts);
  const background = typed ?? (said === undefined ? undefined : soundRow(said, results));
  const points = rows.flatMap(([cause, varied]): [string, number[]][] => {
    const shares = valueFor<Certain | Shares>(varied, facts);
    if (shares === undefined) return [];
    const row =
      complaint || background === undefined
        ? complaintRow(shares, results)
        : causeRow(isCertain(shares) ? { [shares.always]: 'always' } : shares, results, background);
    return [[cause, [...row]]];
  });
  return {
    ...(background !== undefined && { background: [...background] }),
    points: {
      ...written.points,
      ...Object.fromEntries(points),
      ...(complaint && format === 2 && withoutUnlisted(written, results)),
    },
  };
}

/** What is on no list shows the complaint in any of its forms where the author says nothing of it. */
function withoutUnlisted(
  { points, 'shows-with': showsWith = {} }: WrittenCheck,
  results: readonly string[],
): Record<string, number[]> {
  if (Object.hasOwn(points, unlisted) || Object.hasOwn(showsWith, unlisted)) return {};
  const bad = results.length - 1;
  return { [unlisted]: results.map((_, index) => (index === 0 ? 0 : 1 / bad)) };
}

/** The tree with its results named by the bands that they have now, as after the vehicle's own book. */
export function withLabels(tree: Tree): Tree {
  const { written } = tree;
  if (written === undefined) return tree;
  const file = withBranches(written);
  return {
    ...tree,
    checks: mapValues(tree.checks, (check, id) => relabel(check, file[id])),
  };
}

function relabel(check: Check, written: WrittenCheck | undefined): Check {
  const { reading } = check;
  if (written?.limits === undefined || reading === undefined) return check;
  const words = new Map(written.results.map(({ id, label }) => [id, label]));
  const results = check.results.map((result) => ({
    ...result,
    label: labelWith(words.get(result.id), result, reading.unit),
  }));
  const healthy = written.healthy === undefined ? bandOfFirst(written, results) : check.healthy;
  return { ...check, results, ...(healthy !== undefined && { healthy }) };
}
