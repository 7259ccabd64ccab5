import type { Problem, Tell } from '../../problem.ts';
import type { Check, Tree } from '../model.ts';

/** Checks that are said to show the same thing, but have different numbers of results. */
export function lintSame(tree: Tree, tell: Tell): void {
  const first = new Map<string, readonly [id: string, check: Check]>();
  for (const [id, check] of Object.entries(tree.checks)) {
    if (check.same === undefined) continue;
    const other = first.get(check.same);
    if (other === undefined) first.set(check.same, [id, check]);
    else if (other[1].results.length !== check.results.length)
      tell({
        code: 'same-results',
        path: `checks.${id}.same`,
        value: check.same,
        message: `It is the same as "${other[0]}", which has ${other[1].results.length} results, not ${check.results.length}.`,
        mend: 'Give both the same results in the same order, or take "same" out.',
      });
  }
}

export type TreeFile = { readonly file: string; readonly tree: Tree };

/**
 * What only all trees together show: a check that two trees share by its id, with other results. A
 * finding goes over from one tree to the other by these ids.
 */
export function lintLibrary(files: readonly TreeFile[]): Problem[] {
  const ids = files.map(({ file, tree }) => ({ file, id: tree.id }));
  const problems = idsTwice(ids).filter((one) => one !== undefined);
  const first = new Map<string, readonly [tree: string, results: string]>();
  for (const { file, tree } of files) {
    for (const [id, check] of Object.entries(tree.checks)) {
      const results = check.results.map((result) => result.id).join(', ');
      const other = first.get(id);
      if (other === undefined) first.set(id, [tree.id, results]);
      else if (other[1] !== results)
        problems.push({
          code: 'shared-results',
          file,
          path: `checks.${id}.results`,
          value: results,
          message: `In the tree "${other[0]}" this check has other results: ${other[1]}.`,
          mend: 'Give it the same results there and here, or another id.',
        });
    }
  }
  return problems;
}

/** By place: what is wrong where a file gives an id that one before it has. */
export function idsTwice(
  files: readonly { readonly file: string; readonly id: string }[],
): readonly (Problem | undefined)[] {
  const first = new Map<string, string>();
  return files.map(({ file, id }) => {
    const twin = first.get(id);
    if (twin === undefined) first.set(id, file);
    return twin === undefined ? undefined : idTwice(file, id, twin);
  });
}

const idTwice = (file: string, id: string, twin: string): Problem => ({
  code: 'tree-twice',
  file,
  path: 'id',
  value: id,
  message: `${twin} has the same id.`,
  mend: 'Give each tree its own id: the name of its file.',
});
