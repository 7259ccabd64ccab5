import type { Tell } from '../../problem.ts';
import { gatesOf } from '../way/gates.ts';
import type { Result, Tree } from '../model.ts';
import { nextsOf, parseNext } from '../way/next.ts';

const pathOf = (check: string, index: number): string => `checks.${check}.results[${index}].next`;

/** Results that lead nowhere, ends that say no reason, and trees that the library does not have. */
export function lintEnds(tree: Tree, tell: Tell, trees?: readonly string[]): void {
  for (const [id, check] of Object.entries(tree.checks))
    check.results.forEach((result, index) => {
      if (result.next === undefined)
        tell({
          code: 'dead-end',
          path: pathOf(id, index),
          value: result.id,
          message: `The result "${result.id}" leads nowhere.`,
          mend: 'Give "next": a check, cause:ID, tree:ID or stop.',
        });
      for (const next of nextsOf(result))
        lintEnd(result, next, { path: `checks.${id}.results[${index}]`, tell, trees });
    });
}

/** Causes from which a tree goes on that the library does not have. */
export function lintOnward({ causes }: Tree, tell: Tell, trees: readonly string[] = []): void {
  for (const [id, { tree }] of Object.entries(causes))
    if (tree !== undefined && trees.length > 0 && !trees.includes(tree))
      tell(unknownTree(`causes.${id}.tree`, tree, trees));
}

const unknownTree = (path: string, tree: string, trees: readonly string[]) => ({
  code: 'unknown-tree',
  path,
  value: tree,
  message: `The library has no tree "${tree}".`,
  mend: trees.length > 0 ? `It has: ${trees.join(', ')}.` : 'Add it, or end with stop.',
});

type End = {
  readonly path: string;
  readonly tell: Tell;
  readonly trees: readonly string[] | undefined;
};

function lintEnd({ reason }: Result, text: string, { path, tell, trees }: End): void {
  const next = parseNext(text);
  if ((next.kind === 'stop' || next.kind === 'tree') && reason === undefined)
    tell({
      code: 'no-reason',
      path: `${path}.reason`,
      value: text,
      message: `The way ends here (${text}) and does not say why.`,
      mend: 'Give "reason": what is known now and what to do with it.',
    });
  if (next.kind === 'tree' && trees !== undefined && !trees.includes(next.tree))
    tell({ ...unknownTree(`${path}.next`, next.tree, trees), value: text });
}

type Reached = { readonly checks: ReadonlySet<string>; readonly causes: ReadonlySet<string> };

/** What the tree's own way can come to, whatever the checks show. */
function reach(tree: Tree): Reached {
  const checks = new Set<string>();
  const causes = new Set<string>();
  const open = [tree.complaint.confirm, tree.start, ...tree.baseline];
  for (let id = open.pop(); id !== undefined; id = open.pop()) {
    if (checks.has(id) || !Object.hasOwn(tree.checks, id)) continue;
    checks.add(id);
    open.push(...gatesOf(tree, id).map(({ check }) => check));
    for (const to of (tree.checks[id]?.results ?? []).flatMap(nextsOf).map(parseNext)) {
      if (to.kind === 'check') open.push(to.check);
      if (to.kind === 'cause') causes.add(to.cause);
      if (to.kind === 'tree') for (const cause of handedOver(tree, id, to.tree)) causes.add(cause);
    }
  }
  return { checks, causes };
}

/** Causes that a check looks at and that another tree goes on from: seen, they are handed over at once. */
const handedOver = (tree: Tree, check: string, to: string): readonly string[] =>
  (tree.checks[check]?.['looks-at'] ?? []).filter((cause) => tree.causes[cause]?.tree === to);

/** Checks and causes that the tree's own way never comes to. */
export function lintReach(tree: Tree, tell: Tell): void {
  const reached = reach(tree);
  for (const id of Object.keys(tree.checks))
    if (!reached.checks.has(id))
      tell({
        code: 'unreachable-check',
        path: `checks.${id}`,
        value: id,
        message: 'The way never comes to this check.',
        mend: 'Let a result lead to it, make it a baseline, or take it out.',
      });
  for (const id of Object.keys(tree.causes))
    if (!reached.causes.has(id))
      tell({
        code: 'unreachable-cause',
        path: `causes.${id}`,
        value: id,
        message: 'No result on the way names this cause.',
        mend: `Let a result lead to cause:${id}.`,
      });
}

/**
 * Ways that come back to a check. Nothing was changed in between, so the check shows the same
 * again and the way goes round for ever. Each way back is told once.
 */
export function lintLoops(tree: Tree, tell: Tell): void {
  const done = new Set<string>();
  const walk = (id: string, route: readonly string[]): void => {
    done.add(id);
    const leads = (tree.checks[id]?.results ?? []).flatMap((result, index) =>
      nextsOf(result).map((next) => ({ index, to: parseNext(next) })),
    );
    leads.forEach(({ index, to }) => {
      if (to.kind !== 'check') return;
      const from = [...route, id];
      if (from.includes(to.check))
        tell({
          code: 'loop',
          path: pathOf(id, index),
          value: to.check,
          message: `The way goes round: ${[...from.slice(from.indexOf(to.check)), to.check].join(', ')}.`,
          mend: 'Nothing was changed in between: lead on to a check not taken yet, a cause or stop.',
        });
      else if (!done.has(to.check)) walk(to.check, from);
    });
  };
  for (const id of [tree.complaint.confirm, tree.start, ...Object.keys(tree.checks)])
    if (!done.has(id)) walk(id, []);
}
