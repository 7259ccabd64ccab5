import { sum } from '../../sum.ts';
import { edgesOf } from '../limits.ts';
import { unlisted, type BookLimit, type Check, type Tree } from '../model.ts';

type Row = readonly number[];
type Plain = Readonly<Record<string, unknown>>;

/**
 * A file's tree rewritten in the words of format 2, key by key in its own order: chances by the
 * names of the results, bands by their limits, a row for each cause in the complaint's own test.
 * Belief and way stay what they were. What is written by name already stays as it is.
 * @param file what the file holds
 * @param tree the same, held against its rules
 */
export function upgrade(file: Plain, tree: Tree): Plain {
  const checks = file['checks'] as Readonly<Record<string, Plain>>;
  return {
    ...file,
    format: 2,
    checks: Object.fromEntries(
      Object.entries(checks).map(([id, written]) => {
        const check = tree.checks[id];
        return [id, check === undefined ? written : upgradeCheck(written, check, tree, id)];
      }),
    ),
  };
}

function upgradeCheck(written: Plain, check: Check, tree: Tree, id: string): Plain {
  const isComplaint = id === tree.complaint.confirm;
  const limits = written['limits'] === undefined ? limitsOf(check) : undefined;
  const rows = isComplaint ? everyRow(tree, check) : check.points;
  const entries = Object.entries(written).flatMap(([key, value]): [string, unknown][] => {
    if (key === 'background') return isComplaint ? [] : [['sound', shares(value as Row, check)]];
    if (key === 'points') return [];
    if (key === 'results' && limits !== undefined)
      return [...Object.entries(limits), ['results', withoutEnds(value as readonly Plain[])]];
    return [[key, value]];
  });
  const named = namedRows(rows, check, isComplaint, written['shows-with'] as Plain | undefined);
  const source = entries.findIndex(([key]) => key === 'source');
  const place = source < 0 ? entries.length : source;
  return Object.fromEntries([
    ...entries.slice(0, place).filter(([key]) => key !== 'shows-with'),
    ...(Object.keys(named).length > 0 ? [['shows-with', named]] : []),
    ...entries.slice(place),
  ] as [string, unknown][]);
}

/** The rows of the complaint's own test; a cause without one shows the last result for certain. */
function everyRow({ causes, unlisted: odds }: Tree, check: Check): Readonly<Record<string, Row>> {
  const last = check.results.map((_, index) => (index === check.results.length - 1 ? 1 : 0));
  // What the circuit works out has no row of its own yet, and is not to be written over.
  const listed = check.feed === undefined ? Object.keys(causes) : Object.keys(check.points);
  const all = [...listed, ...(odds > 0 ? [unlisted] : [])];
  return Object.fromEntries(all.map((cause) => [cause, check.points[cause] ?? last]));
}

function namedRows(
  rows: Readonly<Record<string, Row>>,
  check: Check,
  isComplaint: boolean,
  before: Plain = {},
): Plain {
  const named = Object.entries(rows).map(([cause, row]): [string, unknown] => {
    const certain = isComplaint ? row.indexOf(1) : -1;
    const result = check.results[certain];
    return [cause, result === undefined ? shares(row, check) : { always: result.id }];
  });
  return { ...Object.fromEntries(named), ...before };
}

/** Of a hundred, by the names of the results; the healthy one gets what is left. */
function shares(row: Row, { results }: Check): Readonly<Record<string, number>> {
  const all = sum(row);
  return Object.fromEntries(
    results.flatMap(({ id }, index): [string, number][] =>
      index === 0 ? [] : [[id, Number(((100 * (row[index] ?? 0)) / all).toPrecision(12))]],
    ),
  );
}

type LimitKeys = {
  readonly limits: readonly (number | BookLimit)[];
  readonly bands?: readonly string[];
};

/** The limits of a check with bands; named bands where the limits alone would order them otherwise. */
function limitsOf({ results, reading }: Check): LimitKeys | undefined {
  const banded = results.some(({ from, below }) => from !== undefined || below !== undefined);
  if (reading === undefined || !banded) return undefined;
  const rising = results.toSorted((one, other) => edgesOf(one).from - edgesOf(other).from);
  const limits = rising.slice(1).flatMap(({ from }) => (from === undefined ? [] : [from]));
  const order = rising.map(({ id }) => id);
  const listed = results.map(({ id }) => id);
  if (order.join() === listed.toReversed().join()) return { limits: limits.toReversed() };
  return limits.length > 1 && order.join() === listed.join()
    ? { limits }
    : { limits, bands: order };
}

const withoutEnds = (results: readonly Plain[]): readonly Plain[] =>
  results.map(({ from: _from, below: _below, ...rest }) => rest);
