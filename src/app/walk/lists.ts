import { gradeOf, grades } from '../../core/reason/grade.ts';
import { checkMinutes } from '../../core/reason/history/from-story.ts';
import type { Closing } from '../../core/session/record/closing.ts';
import { currentLeg, lastFinding, type Story } from '../../core/session/story.ts';
import { triageOf } from '../../core/session/triage.ts';
import { isLook } from '../../core/tree/looked.ts';
import type { OpenSession } from '../state.ts';

/** A check that can be chosen instead of the one on screen. */
export type OtherCheck = {
  readonly id: string;
  readonly done: boolean;
  /** With access and standing, ranked by the advice or not. */
  readonly minutes: number;
  /** Minutes saved (or lost) on average against the tree's own next. */
  readonly versusTree: number | undefined;
};

/**
 * All checks: those the advice ranks first, by expected minutes; then those not done yet, the
 * quicker before the longer; then those done.
 */
export function otherChecks({
  story,
  advice,
}: Pick<OpenSession, 'story' | 'advice'>): readonly OtherCheck[] {
  const { tree } = currentLeg(story);
  const ranked = (advice?.next ?? []).filter((step) => step.do === 'check');
  const place = (id: string): number => {
    const index = ranked.findIndex((step) => step.id === id);
    return index < 0 ? ranked.length : index;
  };
  return Object.keys(tree.checks)
    .filter((id) => !isLook(id))
    .map((id) => ({
      id,
      done: lastFinding(story, id) !== undefined,
      minutes: checkMinutes(story, id),
      versusTree: ranked[place(id)]?.versusTree,
    }))
    .toSorted(
      (a, b) =>
        place(a.id) - place(b.id) || Number(a.done) - Number(b.done) || a.minutes - b.minutes,
    );
}

export type SuspectLine = {
  readonly id: string;
  readonly repaired: boolean;
  /** Undefined while the advice is being worked out. */
  readonly chance: number | undefined;
};

/**
 * Causes by how strongly they are suspected now, of those on one step the shortest repair first; by
 * their odds in the tree while that is not known. Repaired ones come last.
 */
export function suspects({
  story,
  advice,
}: Pick<OpenSession, 'story' | 'advice'>): readonly SuspectLine[] {
  const { causes } = currentLeg(story).tree;
  const chances = new Map(advice?.suspects.map(({ cause, chance }) => [cause, chance]));
  return Object.entries(causes)
    .map(([id, { odds, repair }]) => ({
      odds,
      minutes: repair.minutes,
      line: {
        id,
        repaired: story.repairs.some(({ cause }) => cause === id),
        chance: advice === undefined ? undefined : (chances.get(id) ?? 0),
      },
    }))
    .toSorted(
      (a, b) =>
        Number(a.line.repaired) - Number(b.line.repaired) ||
        step(a.line) - step(b.line) ||
        (advice === undefined ? b.odds - a.odds : a.minutes - b.minutes) ||
        (a.line.id < b.line.id ? -1 : 1),
    )
    .map(({ line }) => line);
}

const step = ({ chance }: SuspectLine): number =>
  chance === undefined ? 0 : grades.indexOf(gradeOf(chance));

export type Ending = {
  readonly as: Closing;
  readonly label: string;
};

/** How a session may end; one in which brakes were sorted ends with an inspection, never as fixed. */
export const endingsOf = (story: Story): readonly Ending[] =>
  triageOf(story) === undefined
    ? [
        { as: 'fixed', label: 'fixed and proven' },
        { as: 'handed-on', label: 'handed on as it stands' },
        ...unmended,
      ]
    : [{ as: 'handed-on', label: 'handed to inspection' }, ...unmended];

const unmended: readonly Ending[] = [
  { as: 'given-up', label: 'given up' },
  { as: 'not-reproduced', label: 'the complaint could not be made to happen' },
];
