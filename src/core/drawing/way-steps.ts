import type { PayloadOf } from '../session/event.ts';
import { readWords, resultWords } from '../session/finding-words.ts';
import { fold } from '../session/fold.ts';
import { checkIn, fromLegs, type Finding, type Story } from '../session/story.ts';
import type { Result, Tree } from '../tree/model.ts';
import { nextsOf, parseNext } from '../tree/way/next.ts';

/** A result that was not the one, and where it would have led. */
export type Branch = { readonly label: string; readonly leads: string };

/** One thing done on the way, as every drawing of it shows it. */
export type WayStep = {
  readonly n: number;
  readonly kind: 'check' | 'proof' | 'repair' | 'passed over' | 'another complaint' | 'gap';
  readonly title: string;
  readonly taken: string;
  /** Whether what was found is what a healthy vehicle shows. */
  readonly healthy: boolean;
  /** Whether the tree itself led here, or the mechanic chose to. */
  readonly own: boolean;
  readonly branches: readonly Branch[];
};

/** What the way did: every check, pass and repair in order, proofs among them. */
export function waySteps(story: Story): readonly WayStep[] {
  const findings = new Map(story.findings.map((finding) => [finding.n, finding]));
  return story.entries.flatMap(({ event, said }): WayStep[] => {
    const finding = findings.get(event.n);
    if (finding !== undefined) return [checkStep(story, finding)];
    if (said?.kind === 'repaired') return [repairStep(story, event.n, said)];
    if (said?.kind === 'skipped' || said?.kind === 'unsure')
      return [passedStep(story, event.n, said)];
    if (said?.kind === 'leg') {
      const leg = story.legs.find(({ since }) => since === event.n);
      return leg === undefined ? [] : [plainStep(event.n, 'another complaint', leg.tree.title)];
    }
    return [];
  });
}

const plainStep = (n: number, kind: WayStep['kind'], title: string, taken = ''): WayStep => ({
  n,
  kind,
  title,
  taken,
  healthy: true,
  own: true,
  branches: [],
});

function repairStep(story: Story, n: number, said: PayloadOf<'repaired'>): WayStep {
  const name = fromLegs(story, ({ tree }) => tree.causes[said.cause]?.name);
  return plainStep(n, 'repair', name ?? 'a cause that is not in this tree', said.did ?? '');
}

function passedStep(story: Story, n: number, said: PayloadOf<'skipped' | 'unsure'>): WayStep {
  const check = fromLegs(story, ({ tree }) => tree.checks[said.check]);
  const taken = said.kind === 'skipped' ? said.reason : 'it could not be told';
  return plainStep(n, 'passed over', check?.ask ?? 'a check that is not in this tree', taken);
}

function checkStep(story: Story, finding: Finding): WayStep {
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

const shownFirst = 28;
const shownLast = 12;

/** A long way with its middle left out, and told so. */
export function shortened(steps: readonly WayStep[]): readonly WayStep[] {
  const left = steps.length - shownFirst - shownLast;
  if (left <= 1) return steps;
  return [
    ...steps.slice(0, shownFirst),
    plainStep(steps[shownFirst]?.n ?? 0, 'gap', `${left} steps are left out here`),
    ...steps.slice(-shownLast),
  ];
}
