import { at } from '../at.ts';
import type { Check, Tree } from '../tree/model.ts';
import { alternativesOf } from '../tree/written/varying.ts';
import { settle } from '../tree/written/settle.ts';
import { causeWords, checkWords, ofHundred, whenWords } from './words.ts';

/** A change of every share smaller than this is not worth a sentence. */
const nothing = 0.004;

/** What a row shows, most often first; what is hardly ever seen comes last, together. */
function shares({ results }: Check, row: readonly number[]): string {
  const shown = results.map(({ label }, index) => ({ label, chance: at(row, index) }));
  const seen = shown.filter(({ chance }) => chance >= 0.01);
  const hardly = shown.filter(({ chance }) => chance < 0.01).map(({ label }) => `"${label}"`);
  const told = seen
    .toSorted((one, other) => other.chance - one.chance)
    .map(
      ({ label, chance }, index) =>
        `"${label}" ${ofHundred(chance)}${index === 0 ? ' of 100' : ''}`,
    );
  return [...told, ...(hardly.length > 0 ? [`hardly ever ${hardly.join(' or ')}`] : [])].join(', ');
}

/**
 * A sentence for each row of a check: what a sound vehicle shows, then each cause alone, those that
 * show most first; last which causes leave the check as it is.
 */
export function rowSentences(tree: Tree, id: string, check: Check): readonly string[] {
  const { background, points } = check;
  const name = checkWords(check);
  const rows = Object.entries(points).toSorted(([, one], [, other]) => at(one, 0) - at(other, 0));
  const tells = rows.filter(([, row]) => !isSame(row, background));
  const silent = Object.keys(tree.causes).filter((cause) => !tells.some(([one]) => one === cause));
  return [
    ...(background === undefined
      ? []
      : [`A sound vehicle, ${name}: ${shares(check, background)}.`]),
    ...tells.map(([cause, row]) => `With ${causeWords(tree, cause)}: ${shares(check, row)}.`),
    ...flipped(tree, id),
    ...(silent.length > 0 && background !== undefined
      ? [`It says nothing of ${silent.map((cause) => causeWords(tree, cause)).join(', ')}.`]
      : []),
  ];
}

const isSame = (row: readonly number[], background: readonly number[] | undefined): boolean =>
  background !== undefined &&
  row.every((chance, index) => Math.abs(chance - at(background, index)) < nothing);

/** The rows that are others where a fact is known, each with its vehicles. */
function flipped(tree: Tree, id: string): readonly string[] {
  const { written } = tree;
  const check = written?.checks[id];
  if (written === undefined || check === undefined) return [];
  return Object.entries(check['shows-with'] ?? {}).flatMap(([cause, varied]) =>
    alternativesOf<unknown>(varied).flatMap(({ when }) => {
      if (when === undefined) return [];
      const facts = Object.fromEntries(
        Object.entries(when).map(([fact, values]) => [fact, [values].flat()[0] ?? '']),
      );
      const there = settle(written, facts).checks[id];
      const row = there?.points[cause];
      return there === undefined || row === undefined
        ? []
        : [`Where ${whenWords(when)}, with ${causeWords(tree, cause)}: ${shares(there, row)}.`];
    }),
  );
}
