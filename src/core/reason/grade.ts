import { settledFrom } from './advice/explain.ts';

/** How strongly a cause is suspected, in a word: five steps, the strongest first. */
export const grades = ['strong', 'likely', 'maybe', 'faint', 'remote'] as const;
export type Grade = (typeof grades)[number];

/** Below this chance a cause is no suspect any more. */
export const suspectFrom = 0.01;

/** A cause less likely than this needs no word about why it is not mended. */
export const worthNaming = 0.1;

/**
 * The least chance of each step. Strong counts as found (`settledFrom`); likely is rather there than
 * not, so that a repair is no guess; below maybe nothing need be said of a cause that is not mended;
 * remote is no suspect any more (`suspectFrom`). "Open" is no step: on a wire it means broken.
 */
const least: Readonly<Record<Grade, number>> = {
  strong: settledFrom,
  likely: 0.5,
  maybe: worthNaming,
  faint: suspectFrom,
  remote: 0,
};

/** The step on which a chance (0 to 1) stands. */
export const gradeOf = (chance: number): Grade =>
  grades.find((grade) => chance >= least[grade]) ?? 'remote';

/** Whether a repair of a cause with this chance would be a guess. */
export const isGuess = (chance: number): boolean => chance < least.likely;
