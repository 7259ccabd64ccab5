import type { PayloadOf } from '../session/event.ts';
import { checkIn, type Finding, type Story } from '../session/story.ts';
import { showReading } from '../trade/units/units.ts';
import type { Result, Tree } from '../tree/model.ts';
import { parseNext } from '../tree/next.ts';

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
  const answered = new Set<string>();
  let lead: string | undefined;
  return story.entries.flatMap(({ event, said }): WayStep[] => {
    const finding = findings.get(event.n);
    if (finding !== undefined) {
      const own = isOwn(story, finding, lead, answered);
      answered.add(finding.check);
      lead = leadFrom(story, finding, answered) ?? lead;
      return [checkStep(story, finding, own)];
    }
    if (said?.kind === 'repaired') return [repairStep(story, event.n, said)];
    if (said?.kind === 'skipped' || said?.kind === 'unsure') {
      answered.add(said.check);
      return [passedStep(story, event.n, said)];
    }
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
  const name = story.legs
    .map(({ tree }) => tree.causes[said.cause]?.name)
    .find((one) => one !== undefined);
  return plainStep(n, 'repair', name ?? 'a cause that is not in this tree', said.did ?? '');
}

function passedStep(story: Story, n: number, said: PayloadOf<'skipped' | 'unsure'>): WayStep {
  const check = story.legs
    .map(({ tree }) => tree.checks[said.check])
    .find((one) => one !== undefined);
  const taken = said.kind === 'skipped' ? said.reason : 'it could not be told';
  return plainStep(n, 'passed over', check?.ask ?? 'a check that is not in this tree', taken);
}

function checkStep(story: Story, finding: Finding, own: boolean): WayStep {
  const check = checkIn(story, finding.check, finding.leg);
  const results = check?.results ?? [];
  const taken = results.filter(({ id }) => id === finding.result || id === finding.orResult);
  const reading =
    finding.reading === undefined
      ? ''
      : `${showReading(finding.reading.value, finding.reading.unit)} · `;
  const tree = story.legs[finding.leg]?.tree;
  return {
    n: finding.n,
    kind: finding.proof ? 'proof' : 'check',
    title: check?.ask ?? 'a check that is not in this tree',
    taken: `${reading}${taken.map(({ label }) => label).join(' or ')}`,
    healthy: finding.result === results[0]?.id && finding.orResult === undefined,
    own,
    branches: results
      .filter((result) => !taken.includes(result))
      .map((result) => ({ label: result.label, leads: leadsTo(tree, result) })),
  };
}

/** Where a result ends the search, in a few words; empty where it only leads to the next check. */
function leadsTo(tree: Tree | undefined, { next }: Result): string {
  const lead = next === undefined ? undefined : parseNext(next);
  if (lead === undefined || tree === undefined) return '';
  if (lead.kind === 'check') return '';
  if (lead.kind === 'cause') return tree.causes[lead.cause]?.name ?? '';
  return lead.kind === 'tree' ? 'another complaint' : 'the tree ends here';
}

const nextCheck = (result: Result | undefined): string | undefined => {
  const lead = result?.next === undefined ? undefined : parseNext(result.next);
  return lead?.kind === 'check' ? lead.check : undefined;
};

/** The check that the tree asks next after a finding, past all that is answered. */
function leadFrom(
  story: Story,
  finding: Finding,
  answered: ReadonlySet<string>,
): string | undefined {
  const tree = story.legs[finding.leg]?.tree;
  const taken = tree?.checks[finding.check]?.results.find(({ id }) => id === finding.result);
  let lead = nextCheck(taken);
  const passed = new Set<string>();
  while (lead !== undefined && answered.has(lead) && !passed.has(lead)) {
    passed.add(lead);
    const check: string = lead;
    const shown = story.findings.findLast((one) => one.check === check)?.result;
    const results = tree?.checks[check]?.results ?? [];
    lead = nextCheck(results.find(({ id }) => id === shown) ?? results[0]);
  }
  return lead;
}

function isOwn(
  story: Story,
  { proof, check, leg, n }: Finding,
  lead: string | undefined,
  answered: ReadonlySet<string>,
): boolean {
  if (proof || lead === undefined || check === lead) return true;
  const tree = story.legs[leg]?.tree;
  if (tree === undefined || (tree.start === check && !answered.has(check))) return true;
  const repaired = story.repairs.findLast((repair) => repair.n < n)?.cause;
  const asked = repaired === undefined ? [] : (tree.causes[repaired]?.repair.then ?? []);
  return [tree.complaint.confirm, ...tree.baseline, ...asked].includes(check);
}

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
