import { unlisted } from '../../tree/model.ts';
import type { Tree } from '../../tree/model.ts';
import { triageOfCause } from '../../session/triage.ts';
import type { Advice, NextStep } from '../advice/advice.ts';
import { gradeOf, worthNaming } from '../grade.ts';

/** `41 %`; the ends are told as words would: never 0 % or 100 % for what is not certain. */
export function percent(chance: number): string {
  if (chance > 0.995) return 'over 99 %';
  if (chance < 0.005) return 'under 1 %';
  return `${Math.round(chance * 100)} %`;
}

/** Minutes to the nearest whole one; `under 1 min` for less than half. */
export const aboutMinutes = (minutes: number): string =>
  minutes < 0.5 ? 'under 1 min' : `${Math.round(minutes)} min`;

const nameOf = (tree: Tree, cause: string): string =>
  tree.causes[cause]?.name ?? 'something not on this list';

/** A step by its name: what a check asks, what a repair mends. */
export const stepWords = (tree: Tree, { do: kind, id }: Pick<NextStep, 'do' | 'id'>): string =>
  kind === 'check'
    ? (tree.checks[id]?.ask ?? id).replace(/[?.]$/, '')
    : id === unlisted
      ? 'look further: it may be something not on this list'
      : `${triageOfCause(tree, id) === undefined ? 'repair' : 'for the inspection'}: ${nameOf(tree, id)}`;

/** Why a step, in one sentence of plain words. */
export function becauseOf(tree: Tree, step: NextStep): string {
  const { why, minutes } = step;
  if (why.kind === 'proof')
    return `The complaint's own test comes first: ${percent(why.cures)} that the repair has cured it.`;
  if (why.kind === 'again')
    return 'Everything else waits until this shows otherwise: put that right, and look again.';
  if (why.kind === 'repair' && triageOfCause(tree, step.id) !== undefined)
    return `${nameOf(tree, step.id)} is there with ${percent(why.there)}: named so, it goes to inspection.`;
  if (why.kind === 'repair')
    return `${nameOf(tree, step.id)} is there with ${percent(why.there)}, and mending it would end the complaint with ${percent(why.cures)}; that is quicker than looking further.`;
  if (why.settles >= 0.5)
    return `A ${aboutMinutes(minutes)} check that would settle it with ${percent(why.settles)}.`;
  const [likeliest] = why.outcomes.toSorted((one, other) => other.chance - one.chance);
  const [telling] = why.outcomes.toSorted((one, other) => other.suspectChance - one.suspectChance);
  if (telling === undefined || likeliest === undefined)
    return `A ${aboutMinutes(minutes)} check that parts the suspects.`;
  return `A ${aboutMinutes(minutes)} check: its most telling answer would put ${nameOf(tree, telling.suspect).toLowerCase()} at ${percent(telling.suspectChance)}, and comes in ${percent(telling.chance)} of such cases.`;
}

/** What the advice comes to: who leads, and why the first step is the quickest. */
export function adviceSentence(tree: Tree, advice: Advice): string {
  if (advice.kind === 'proved') return 'The complaint is gone: put everything back and close.';
  const [first] = advice.next;
  const lead = advice.because.unlistedLeads
    ? 'None of the listed causes fits well.'
    : advice.because.leader === undefined
      ? 'No suspect is left.'
      : `${nameOf(tree, advice.because.leader.cause)} leads with ${percent(advice.because.leader.chance)}.`;
  return first === undefined ? lead : `${lead} ${becauseOf(tree, first)}`;
}

/** Fewer minutes than this are not worth leaving the way for. */
const worthSaying = 5;

/**
 * Whether a step saves against the tree's own next, in words; empty where that is next to nothing.
 * No number: held against walks on hidden vehicles what is worked out came to about twice what the
 * walk saved (`npm run bench claims`), and a number on screen is one that holds.
 */
export const savesWords = (versusTree: number | undefined): string =>
  versusTree === undefined || versusTree < worthSaying ? '' : 'likely quicker';

/** Repairs that wait for evidence, the likeliest cause first, with the short check that would tell. */
export function heldLines(tree: Tree, { held, suspects }: Advice): readonly string[] {
  return suspects.flatMap(({ cause, chance }) => {
    const wait = held.find((one) => one.cause === cause);
    if (wait === undefined || chance < worthNaming) return [];
    const ask = stepWords(tree, { do: 'check', id: wait.check });
    return [
      `Not yet: ${nameOf(tree, cause)} (${gradeOf(chance)}). A short check would tell: ${ask}`,
    ];
  });
}
