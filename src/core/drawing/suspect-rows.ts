import { unlisted } from '../tree/model.ts';
import type { ChanceMap, BeliefStep } from '../reason/history/belief-history.ts';
import { inLeg, isProvenGone, mendedFor, type Complaint } from '../session/complaints.ts';
import { tellingCause, type Story } from '../session/story.ts';

/** One suspect, or the likeliest of several, along the moments of one complaint. */
export type SuspectRow = {
  readonly name: string;
  readonly kind: 'cause' | 'others' | 'unlisted';
  /** What was done about it; nothing for a suspect only. */
  readonly done: 'mended' | 'tried, no cure' | 'named' | undefined;
  /** From 0 to 1 at each moment; undefined where nothing was believed of it. */
  readonly chances: readonly (number | undefined)[];
};

/** `next tree` is where a tree led on to another one; of what is `not weighed` nothing is known. */
export type Moment = {
  readonly label: string;
  readonly kind: 'start' | 'finding' | 'repair' | 'next tree' | 'not weighed';
};

/** The suspects of one complaint, from its beginning to its proof or as far as it went. */
export type SuspectRows = {
  readonly moments: readonly Moment[];
  readonly rows: readonly SuspectRow[];
  /** The complaint's own test showed good in the end: no suspect is left after that. */
  readonly proved: boolean;
};

const mostNamed = 4;

type Column = Moment & { readonly leg: number; readonly chances: ChanceMap | undefined };

/**
 * The suspects of a complaint, those first that came to be the likeliest; what was mended or named is
 * always among them. Undefined where nobody gave odds, or where what was mended had none.
 * @param failed causes whose repair is known to have cured nothing
 */
export function suspectRows(
  story: Story,
  history: readonly BeliefStep[],
  complaint: Complaint,
  failed: ReadonlySet<string> = new Set(),
): SuspectRows | undefined {
  const proof = proofOf(story, complaint);
  const columns = columnsOf(story, history, complaint, proof ?? Infinity);
  const mended = mendedFor(story, complaint).map(({ cause }) => cause);
  const named = complaint.legs.flatMap((leg) => inLeg(story.legs, leg, story.condemned));
  const known = [...new Set(columns.flatMap(({ chances }) => [...(chances?.keys() ?? [])]))];
  if (known.length === 0 || mended.some((id) => !known.includes(id))) return undefined;
  const tried = [...mended, ...named.map(({ cause }) => cause)];
  const culprits = new Set(tried.filter((id) => known.includes(id)));
  const most = (id: string): number =>
    Math.max(...columns.map(({ chances }) => chances?.get(id) ?? 0));
  const listed = known
    .filter((id) => id !== unlisted)
    .toSorted((one, other) => most(other) - most(one) || (one < other ? -1 : 1));
  const beside = listed.filter((id) => !culprits.has(id));
  const shown = new Set([...culprits, ...beside.slice(0, Math.max(0, mostNamed - culprits.size))]);
  const doneTo = (id: string): SuspectRow['done'] =>
    mended.includes(id) ? mendedWord(failed.has(id)) : culprits.has(id) ? 'named' : undefined;
  return {
    moments: columns.map(({ label, kind }) => ({ label, kind })),
    proved: proof !== undefined,
    rows: [
      ...listed
        .filter((id) => shown.has(id))
        .map((id) => {
          const chances = columns.map((column) => column.chances?.get(id));
          return {
            name: nameOf(story, id, columns),
            kind: 'cause',
            done: doneTo(id),
            chances,
          } as const;
        }),
      ...restRows(
        listed.filter((id) => !shown.has(id)),
        columns,
      ),
    ],
  };
}

/** The others on the list as one row, and what is not on it. */
function restRows(others: readonly string[], columns: readonly Column[]): readonly SuspectRow[] {
  const rowOf = (
    kind: SuspectRow['kind'],
    name: string,
    ids: readonly string[],
  ): readonly SuspectRow[] => {
    const chances = columns.map((column) => likeliest(ids, column.chances));
    const isWeighed = chances.some((chance) => chance !== undefined);
    return isWeighed ? [{ name, kind, done: undefined, chances }] : [];
  };
  return [
    ...rowOf('others', othersName(others.length), others),
    ...rowOf('unlisted', 'Something not on the list', [unlisted]),
  ];
}

const mendedWord = (hasFailed: boolean) => (hasFailed ? 'tried, no cure' : 'mended');

/** Number of the finding that proved a complaint gone. */
function proofOf(story: Story, complaint: Complaint): number | undefined {
  if (!isProvenGone(story, complaint)) return undefined;
  const leg = mendedFor(story, complaint).at(-1)?.leg;
  return story.proofs.findLast((proof) => proof.leg === leg)?.n;
}

const othersName = (number: number): string =>
  number === 1 ? 'The other one on the list' : `The likeliest of the other ${number}`;

/** The highest chance of several; undefined where none of them is weighed. */
function likeliest(ids: readonly string[], chances: ChanceMap | undefined): number | undefined {
  const each = ids.map((id) => chances?.get(id)).filter((chance) => chance !== undefined);
  return each.length === 0 ? undefined : Math.max(...each);
}

/** A cause by the leg in which it came to be the likeliest. */
function nameOf(story: Story, id: string, columns: readonly Column[]): string {
  const [highest] = columns
    .filter(({ chances }) => chances?.has(id))
    .toSorted((one, other) => (other.chances?.get(id) ?? 0) - (one.chances?.get(id) ?? 0));
  const cause = tellingCause(story, id, highest?.leg);
  const name = cause?.short ?? cause?.name ?? id;
  return name.slice(0, 1).toUpperCase() + name.slice(1);
}

/** What was believed at first in each leg and after each finding and repair, up to the proof. */
function columnsOf(
  story: Story,
  history: readonly BeliefStep[],
  { legs }: Complaint,
  proof: number,
): readonly Column[] {
  const numbers = new Map(story.findings.map(({ n }, index) => [n, String(index + 1)]));
  return legs.flatMap((leg, place): readonly Column[] => {
    const steps = history.filter((step) => step.leg === leg && step.n < proof);
    const [first] = steps;
    if (first === undefined) return [];
    const begun = { leg, chances: first.before };
    return [
      place === 0
        ? { ...begun, label: 'start', kind: 'start' }
        : { ...begun, label: '', kind: 'next tree' },
      ...steps.flatMap((step, index): readonly Column[] => [
        ...(isAfterGap(story, steps[index - 1]?.n, step.n)
          ? [{ leg, label: '…', kind: 'not weighed' as const, chances: undefined }]
          : []),
        {
          leg,
          kind: step.kind,
          label: step.kind === 'repair' ? 'R' : (numbers.get(step.n) ?? ''),
          chances: step.after,
        },
      ]),
    ];
  });
}

/** Whether findings lie between two weighed ones: of a very long leg the middle is not weighed. */
const isAfterGap = ({ findings }: Story, before: number | undefined, n: number): boolean =>
  before !== undefined && findings.some((one) => one.n > before && one.n < n);
