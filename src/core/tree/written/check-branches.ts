import { sum } from '../../sum.ts';
import type { Problem, Tell } from '../../problem.ts';
import { unlisted } from '../model.ts';
import { unknown } from '../unknown.ts';
import { blockOf, madeOf } from './branches.ts';
import type { Branches } from './branches-model.ts';
import type { Written } from './written.ts';

/** What is wrong with the branches of a tree that the checks made from them would not tell of. */
export function checkBranches(written: Written, tell: Tell): void {
  for (const [id, block] of Object.entries(written.branches ?? {})) {
    const path = `branches.${id}`;
    checkHanging(written, block, path, tell);
    checkProbe(block, path, tell);
    for (const made of madeOf(id, block, written))
      if (Object.hasOwn(written.checks, made))
        tell({
          code: 'branch-name-taken',
          path,
          value: made,
          message: `A check is called "${made}", as one that these branches stand for.`,
          mend: 'Give the check, or the branches, another id.',
        });
  }
}

/** Causes that hang on branches: known ones, and none on more than a hundred of a hundred vehicles. */
function checkHanging({ causes }: Written, { of }: Branches, path: string, tell: Tell): void {
  const shares = new Map<string, number[]>();
  for (const [id, { hangs }] of Object.entries(of))
    for (const [cause, share] of Object.entries(hangs)) {
      shares.set(cause, [...(shares.get(cause) ?? []), share]);
      if (cause !== unlisted && !Object.hasOwn(causes, cause))
        tell(unknown('cause', cause, `${path}.of.${id}.hangs.${cause}`, causes));
    }
  for (const [cause, all] of shares)
    if (sum(all) > 100.000001)
      tell({
        code: 'branches-over-a-hundred',
        path: `${path}.of`,
        value: cause,
        message: `Of a hundred vehicles with "${cause}", ${Number(sum(all).toPrecision(6))} have it on one of the branches.`,
        mend: 'Say of a hundred on how many it is on each branch; what is left is on none of them.',
      });
}

function checkProbe({ probe, look, of }: Branches, path: string, tell: Tell): void {
  if (Object.keys(of).length < 2)
    tell({
      code: 'one-branch',
      path: `${path}.of`,
      message: 'There is nothing to part where there are not two branches.',
      mend: 'Give at least two, in the order in which they lie beside one another.',
    });
  if (!probe.how.some((step) => step.includes('{these}')))
    tell({
      code: 'no-these',
      path: `${path}.probe.how`,
      message: 'No step says which branches are parted.',
      mend: 'Write {these} in the step that parts them: their names take its place.',
    });
  for (const [id, { next }] of Object.entries(of))
    if (next === undefined && look === undefined)
      tell({
        code: 'branch-leads-nowhere',
        path: `${path}.of.${id}`,
        value: id,
        message: `Nothing says where the way goes on once it is known to be "${id}".`,
        mend: 'Give the branch its "next", or the block a "look".',
      });
}

/** Problems of checks that a block stands for, told at the block: the file has no such check. Each once. */
export function atBlocks(written: Written | undefined, problems: readonly Problem[]): Problem[] {
  if (written?.branches === undefined) return [...problems];
  const told = new Set<string>();
  return problems.flatMap((problem) => {
    const check = /^checks\.([^.[]+)/.exec(problem.path ?? '')?.[1];
    const block = check === undefined ? undefined : blockOf(written, check);
    if (block === undefined) return [problem];
    const key = JSON.stringify([problem.code, block, problem.value]);
    if (told.has(key)) return [];
    told.add(key);
    return [{ ...problem, path: `branches.${block}` }];
  });
}
