// Practices of one hidden fault, drawn by the odds of every shipped tree, each played by three policies:
// `npm run bench practice`, or with a count of faults, DROPLIGHT_PRACTICES=200. Prints the tables of src/guide/practice.md.
import { practiceOn } from '../helpers/practice/begun.ts';
import { play, type Played, type Policy } from '../helpers/practice/play.ts';
import { shippedTrees } from '../helpers/library.ts';

const policies: readonly Policy[] = ['own way', 'advice', 'odds'];
const outcomes = ['proven', 'stopped', 'handed over', 'unlisted', 'refused', 'no end'] as const;
const wanted = Number(process.env['DROPLIGHT_PRACTICES'] ?? 2000);

const trees = shippedTrees().filter(({ triage }) => triage === undefined);
const each = Math.ceil(wanted / trees.length);

type Row = Omit<Played, 'recorded'>;
type Fault = { readonly tree: string; readonly rows: Readonly<Record<Policy, Row>> };

const kept = ({ recorded: _, ...row }: Played): Row => row;

function mean(values: readonly number[]): string {
  if (values.length === 0) return '-';
  const middle = values.reduce((all, value) => all + value, 0) / values.length;
  const squares = values.reduce((all, value) => all + (value - middle) ** 2, 0);
  const error = Math.sqrt(squares / Math.max(1, values.length - 1) / values.length);
  const places = Math.abs(middle) < 10 ? 2 : 0;
  return `${middle.toFixed(places)} ± ${error.toFixed(places === 0 ? 1 : 2)}`;
}

const percent = (part: number, whole: number): string => {
  const share = part / whole;
  const error = Math.sqrt((share * (1 - share)) / whole);
  return `${(100 * share).toFixed(1)} ± ${(100 * error).toFixed(1)} %`;
};

const row = (cells: readonly (string | number)[]): string => `| ${cells.join(' | ')} |`;

const faults: Fault[] = [];
for (const tree of trees) {
  for (let number = 0; number < each; number += 1) {
    const begun = practiceOn(tree, { seed: `table ${number}` });
    const rows = {
      'own way': kept(play(begun, 'own way')),
      advice: kept(play(begun, 'advice')),
      odds: kept(play(begun, 'odds')),
    };
    faults.push({ tree: tree.id, rows });
  }
  const own = faults.filter((one) => one.tree === tree.id);
  const proven = (policy: Policy) => own.filter(({ rows }) => rows[policy].outcome === 'proven');
  const cells = policies.flatMap((policy) => [
    proven(policy).length,
    mean(proven(policy).map(({ rows }) => rows[policy].minutes)),
  ]);
  console.log(row([tree.id, own.length, ...cells]));
}

console.log(`\n${faults.length} hidden faults on ${trees.length} trees\n`);
console.log(row(['', ...policies]));
const byPolicy = (of: (rows: readonly Row[], policy: Policy) => string | number) =>
  policies.map((policy) =>
    of(
      faults.map(({ rows }) => rows[policy]),
      policy,
    ),
  );
for (const outcome of outcomes)
  console.log(
    row([
      outcome,
      ...byPolicy((rows) => {
        const count = rows.filter((one) => one.outcome === outcome).length;
        return `${count} (${percent(count, rows.length)})`;
      }),
    ]),
  );
const proven = (rows: readonly Row[]) => rows.filter(({ outcome }) => outcome === 'proven');
const told: readonly [string, (row: Row) => number][] = [
  ['minutes to the proof', ({ minutes }) => minutes],
  ['checks', ({ checks }) => checks],
  ['needless repairs', ({ needless }) => needless],
];
for (const [name, of] of told)
  console.log(row([name, ...byPolicy((rows) => mean(proven(rows).map(of)))]));
console.log(
  row([
    'needless repairs, all practices',
    ...byPolicy((rows) => mean(rows.map(({ needless }) => needless))),
  ]),
);
console.log(
  row([
    'more minutes than the advice, same fault',
    ...byPolicy((_, policy) => {
      const both = faults.filter(
        ({ rows }) => rows[policy].outcome === 'proven' && rows.advice.outcome === 'proven',
      );
      return mean(both.map(({ rows }) => rows[policy].minutes - rows.advice.minutes));
    }),
  ]),
);
console.log(
  row([
    'by the advice after the way had ended',
    ...byPolicy((rows) => proven(rows).filter(({ beyond }) => beyond > 0).length),
  ]),
);

console.log('\nWhy it was not proven:');
const why = new Map<string, number>();
for (const { tree, rows } of faults)
  for (const policy of policies) {
    const { outcome, why: reason } = rows[policy];
    const key = `${policy}, ${outcome}, ${tree}: ${reason.slice(0, 110)}`;
    if (outcome !== 'proven') why.set(key, (why.get(key) ?? 0) + 1);
  }
for (const [key, count] of [...why].toSorted((one, other) => other[1] - one[1]))
  console.log(`${String(count).padStart(4)}  ${key}`);
