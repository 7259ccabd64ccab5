import { complaintsOf, isReturn, type Complaint } from '../session/complaints.ts';
import type { Entry } from '../session/correct.ts';
import type { PayloadOf } from '../session/event.ts';
import { readWords, resultWords } from '../session/finding-words.ts';
import { fold } from '../session/fold.ts';
import { checkIn, fromLegs, tellingCause, type Finding, type Story } from '../session/story.ts';
import type { Result, Tree } from '../tree/model.ts';
import { nextsOf, parseNext } from '../tree/way/next.ts';

/** A result that was not the one, and where it would have led. */
export type Branch = { readonly label: string; readonly leads: string };

/** One thing done on the way, as every drawing of it shows it. */
export type WayStep = {
  readonly n: number;
  readonly kind:
    | 'check'
    | 'proof'
    | 'repair'
    | 'passed over'
    | 'not told'
    | 'taken back'
    /** Several checks in a row that showed what a healthy vehicle shows. */
    | 'healthy checks'
    | 'complaint'
    | 'back to the complaint'
    | 'another tree'
    | 'outcome'
    | 'gap';
  readonly title: string;
  readonly taken: string;
  /** What was first written and put right afterwards; empty where nothing was. */
  readonly trace: string;
  /** Checks that this step stands for, beside one of its own. */
  readonly checks: number;
  /** Whether what was found is what a healthy vehicle shows. */
  readonly healthy: boolean;
  /** Whether the tree itself led here, or the mechanic chose to. */
  readonly own: boolean;
  readonly branches: readonly Branch[];
};

/** What the way did: every check, pass and repair in order, proofs and what was taken back among them. */
export function waySteps(story: Story): readonly WayStep[] {
  const findings = new Map(story.findings.map((finding) => [finding.n, finding]));
  const complaints = complaintsOf(story);
  const [first] = complaints;
  const steps = story.entries.flatMap((entry): readonly WayStep[] => {
    const { event, said, correctedBy } = entry;
    const finding = findings.get(event.n);
    if (finding !== undefined) return [checkStep(story, finding, traceOf(story, finding, entry))];
    if (said === undefined && correctedBy.length > 0) return takenBack(story, entry);
    if (said?.kind === 'repaired') return [repairStep(story, event.n, said)];
    if (said?.kind === 'skipped' || said?.kind === 'unsure')
      return [passedStep(story, event.n, said)];
    return said?.kind === 'leg' ? legStep(story, complaints, event.n) : [];
  });
  return complaints.length > 1 && first !== undefined
    ? [plainStep(0, 'complaint', first.title), ...steps]
    : steps;
}

/** Where another tree takes over: for the same complaint, for a new one, or for one gone back to. */
function legStep(
  story: Story,
  complaints: readonly Complaint[],
  since: number,
): readonly WayStep[] {
  const place = story.legs.findIndex((leg) => leg.since === since);
  const leg = story.legs[place];
  if (leg === undefined) return [];
  const isNew = complaints.some(({ legs }) => legs[0] === place);
  if (isNew) return [plainStep(since, 'complaint', leg.tree.title)];
  const kind = isReturn(story, since) ? 'back to the complaint' : 'another tree';
  return [plainStep(since, kind, leg.tree.title)];
}

/** What was first written of a finding that was put right later. */
function traceOf(story: Story, { check: id, leg }: Finding, { event, correctedBy }: Entry): string {
  if (correctedBy.length === 0 || (event.kind !== 'found' && event.kind !== 'proved')) return '';
  const check = checkIn(story, id, leg);
  const read = readWords(check, event);
  return `first written as ${read === '' ? resultWords(check, event) : read}, and put right`;
}

/** What was written and withdrawn, where it could have misled. */
function takenBack(story: Story, { event }: Entry): readonly WayStep[] {
  const step = (title: string, taken: string): readonly WayStep[] => [
    plainStep(event.n, 'taken back', title, taken),
  ];
  if (event.kind === 'found' || event.kind === 'proved') {
    const check = fromLegs(story, ({ tree }) => tree.checks[event.check]);
    return step(check?.ask ?? 'a check that is not in this tree', resultWords(check, event));
  }
  if (event.kind !== 'condemned' && event.kind !== 'repaired') return [];
  const name = tellingCause(story, event.cause)?.name ?? 'a cause that is not in this tree';
  return step(name, event.kind === 'condemned' ? 'named as the cause' : 'written down as repaired');
}

/** A step that shows nothing of the vehicle. */
export const plainStep = (
  n: number,
  kind: WayStep['kind'],
  title: string,
  taken = '',
): WayStep => ({
  n,
  kind,
  title,
  taken,
  trace: '',
  checks: 0,
  healthy: true,
  own: true,
  branches: [],
});

function repairStep(story: Story, n: number, said: PayloadOf<'repaired'>): WayStep {
  const leg = story.repairs.find((repair) => repair.n === n)?.leg;
  const name = tellingCause(story, said.cause, leg)?.name;
  return plainStep(n, 'repair', name ?? 'a cause that is not in this tree', said.did ?? '');
}

function passedStep(story: Story, n: number, said: PayloadOf<'skipped' | 'unsure'>): WayStep {
  const check = fromLegs(story, ({ tree }) => tree.checks[said.check]);
  const ask = check?.ask ?? 'a check that is not in this tree';
  return said.kind === 'skipped'
    ? plainStep(n, 'passed over', ask, said.reason)
    : plainStep(n, 'not told', ask, 'what it showed could not be told');
}

function checkStep(story: Story, finding: Finding, trace: string): WayStep {
  const check = checkIn(story, finding.check, finding.leg);
  const results = check?.results ?? [];
  const taken = results.filter(({ id }) => id === finding.result || id === finding.orResult);
  const read = readWords(check, finding);
  const tree = story.legs[finding.leg]?.tree;
  return {
    n: finding.n,
    kind: finding.proof ? 'proof' : 'check',
    title: check?.ask ?? 'a check that is not in this tree',
    taken: `${read === '' ? '' : `${read} · `}${resultWords(check, finding)}`,
    trace,
    checks: 1,
    healthy: finding.result === results[0]?.id && finding.orResult === undefined,
    // Worked out only for what is drawn: a long way leaves its middle out.
    get own() {
      return wasDue(story, finding);
    },
    branches: results
      .filter((result) => !taken.includes(result))
      .map((result) => ({ label: result.label, leads: leadsTo(tree, result) })),
  };
}

/** Where a result ends the search, in a few words; empty where it only leads to the next check. */
const leadsTo = (tree: Tree | undefined, result: Result): string =>
  tree === undefined
    ? ''
    : [...new Set(nextsOf(result).map((next) => endWords(tree, next)))]
        .filter((words) => words !== '')
        .join(', or ');

function endWords({ causes }: Tree, next: string): string {
  const lead = parseNext(next);
  if (lead.kind === 'check') return '';
  if (lead.kind === 'cause') return causes[lead.cause]?.name ?? '';
  return lead.kind === 'tree' ? 'another complaint' : 'the tree ends here';
}

/**
 * Whether the tree itself led to a check: the step that was due before it, worked out from what
 * was recorded until then. A check begun by choice counts for nothing here.
 */
function wasDue({ header, entries }: Story, { n, check, proof }: Finding): boolean {
  if (proof) return true;
  const before = entries
    .map(({ event }) => event)
    .filter((event) => event.n < n && event.kind !== 'check-begun');
  const { due } = fold(header, before);
  if (due.kind === 'check' && due.check === check) return true;
  const proving = due.kind === 'proof' || (due.kind === 'check' && due.why === 'repeat');
  return due.kind === 'exhausted' || (proving && wasMade(entries, n, check));
}

/** A repair is proven by more than its proof: to repeat what was looked at before is no detour. */
const wasMade = (entries: Story['entries'], n: number, check: string): boolean =>
  entries.some(({ said, event }) => event.n < n && said?.kind === 'found' && said.check === check);
