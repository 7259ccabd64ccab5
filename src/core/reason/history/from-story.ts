import { bad, type Parsed, type Problem } from '../../problem.ts';
import { broughtFaults, comesAndGoes, countedFindings } from '../../session/contradiction.ts';
import { doneIn } from '../../session/due.ts';
import { holdsBefore } from '../../session/safeguard.ts';
import { currentLeg, type Finding, type Guarded, type Story } from '../../session/story.ts';
import { isLook, isLookedAway } from '../../tree/looked.ts';
import type { Tree } from '../../tree/model.ts';
import { isOwn } from '../../tree/own/bare.ts';
import { placeOf, workMinutes, workOf, type StepName } from '../advice/minutes.ts';
import { usualPrudence } from '../prudence.ts';
import { makeInput, type ReasoningInput, type CheckFinding } from '../belief/evidence.ts';

/** Why a job without a tree has neither suspects by chance nor advice. */
export const noOdds: Problem = {
  code: 'no-odds',
  message: 'No advice: this job has no tree, and nobody gave odds.',
  mend: 'Go on by what you found; "droplight trees from" makes a tree of it to give odds to.',
};

/** What the belief needs, out of a story: the tree being walked and all that was found that it knows. */
export function inputFrom(story: Story, prudence = usualPrudence): Parsed<ReasoningInput> {
  const { tree, shop } = currentLeg(story);
  if (isOwn(tree)) return bad(noOdds);
  const repairs = story.repairs.filter(({ cause }) => Object.hasOwn(tree.causes, cause));
  const repairsBefore = (n: number): number => repairs.filter((repair) => repair.n < n).length;
  return makeInput(tree, {
    findings: countedFindings(story).flatMap(
      (finding) => findingIn(tree, finding, repairsBefore(finding.n)) ?? [],
    ),
    repairs: repairs.map(({ cause }, index) => ({ cause, at: index })),
    comesAndGoes: comesAndGoes(story).filter((check) => Object.hasOwn(tree.checks, check)),
    brought: broughtFaults(story).map(({ cause, n }) => ({ cause, at: repairsBefore(n) })),
    openAccess: story.open,
    standing: story.standing,
    over: story.over,
    accesses: shop.accesses,
    tries: tree.complaint.tries,
    prudence,
  });
}

/** A finding as result indexes; one that this tree's check cannot show is no evidence in it. */
export function findingIn(
  { checks }: Tree,
  { check, result, orResult = result }: Pick<Finding, 'check' | 'result' | 'orResult'>,
  at: number,
): CheckFinding | undefined {
  if (!Object.hasOwn(checks, check)) return undefined;
  const results = checks[check]?.results.map(({ id }) => id) ?? [];
  const [lo, hi] = [results.indexOf(result), results.indexOf(orResult)];
  return lo < 0 || hi < 0 ? undefined : { check, lo, hi, at };
}

/** What the tree itself would do next, as the advice names it. */
export function ownStep({ due }: Pick<Story, 'due'>): StepName | undefined {
  if (due.kind === 'check') return { do: 'check', id: due.check };
  return due.kind === 'named' || due.kind === 'repair'
    ? { do: 'repair', id: due.cause }
    : undefined;
}

/**
 * Steps not to be advised now: checks passed over, or that could not be told, and not repaired since;
 * what a shut safeguard holds back; open looks, which nobody is sent to make, and the repair of what
 * one showed not to be it.
 */
export function leftOut(story: Story): readonly StepName[] {
  const since = story.repairs.at(-1)?.n ?? 0;
  const passed = [...story.skipped, ...story.unsure].filter(({ n }) => n > since);
  const { tree } = currentLeg(story);
  const { causes, checks } = tree;
  const done = doneIn(story);
  const heldChecks = Object.keys(checks).filter(
    (check) => isLook(check) || isHeld(story, { kind: 'check', check }),
  );
  const heldCauses = Object.keys(causes).filter(
    (cause) => isLookedAway(tree, done, cause) || isHeld(story, { kind: 'repair', cause }),
  );
  return [
    ...[...passed.map(({ check }) => check), ...heldChecks].map(
      (id) => ({ do: 'check', id }) as const,
    ),
    ...heldCauses.map((id) => ({ do: 'repair', id }) as const),
  ];
}

const isHeld = (story: Story, step: Guarded): boolean => holdsBefore(story, step).length > 0;

/** What a check costs from where the vehicle stands now, in minutes, as the advice counts it. */
export function checkMinutes(story: Story, id: string): number {
  const { tree, shop } = currentLeg(story);
  const check = tree.checks[id];
  if (check === undefined) throw new RangeError(`the tree has no check ${id}`);
  const place = placeOf(story.open, story.standing, story.over);
  const proves = id === tree.complaint.confirm && story.repairs.length > 0;
  return workMinutes(shop, workOf(tree, check), place, proves ? tree.complaint.tries : 1).total;
}
