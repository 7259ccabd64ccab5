import { at } from '../at.ts';
import { freshInput, withFinding } from '../reason/belief/evidence.ts';
import type { Model } from '../reason/belief/model.ts';
import { believe } from '../reason/belief/posterior.ts';
import type { Tree } from '../tree/model.ts';
import { causeWords, ofHundred } from './words.ts';

/** A cause whose chance moves by less than this is not told. */
const worthTelling = 0.03;
const most = 3;

/** What each result of a check does to the suspects when it is the first thing found: a sentence each. */
export function moveSentences(tree: Tree, model: Model, id: string): readonly string[] {
  const index = model.checks.findIndex((check) => check.id === id);
  const check = at(model.checks, index);
  const input = freshInput(model);
  const before = believe(input);
  if (before.kind === 'bad' || index === model.complaint) return [];
  return check.results.flatMap((_, result) => {
    const after = believe(
      withFinding(input, { check: index, group: check.group, lo: result, hi: result }),
    );
    if (after.kind === 'bad') return [];
    const moved = model.causes
      .map((cause, at_) => ({
        cause: cause.id,
        from: at(before.value.chances, at_),
        to: at(after.value.chances, at_),
      }))
      .filter(({ from, to }) => Math.abs(to - from) >= worthTelling)
      .toSorted((one, other) => Math.abs(other.to - other.from) - Math.abs(one.to - one.from))
      .slice(0, most)
      .map(
        ({ cause, from, to }) =>
          `${causeWords(tree, cause)} ${ofHundred(from)} to ${ofHundred(to)}`,
      );
    const label = tree.checks[id]?.results[result]?.label ?? '';
    return [
      moved.length === 0
        ? `"${label}" found first moves nobody much.`
        : `"${label}" found first: ${moved.join(', ')} of 100.`,
    ];
  });
}
