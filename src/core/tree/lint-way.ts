import type { Tell } from '../problem.ts';
import type { Tree } from './model.ts';
import { firstCheck, parseNext } from './next.ts';

/** Ways that end nowhere, that nobody can reach, or that go round in a circle. */
export function lintWay(tree: Tree, tell: Tell, trees?: readonly string[]): void {
  for (const [id, check] of Object.entries(tree.checks))
    check.results.forEach(({ next, reason }, at) => {
      const path = `checks.${id}.results[${at}]`;
      if (next === undefined)
        tell({
          code: 'dead-end',
          path: `${path}.next`,
          message: 'The result leads nowhere.',
          mend: 'Give "next": a check, cause:ID, tree:ID, or stop with a reason.',
        });
      else lintNext(next, reason, { path, tell, ...(trees && { trees }) });
    });
  lintReach(tree, tell);
  lintLoops(tree, tell);
}

type Place = { readonly path: string; readonly tell: Tell; readonly trees?: readonly string[] };

function lintNext(next: string, reason: string | undefined, { path, tell, trees }: Place): void {
  const lead = parseNext(next);
  if (lead.kind === 'stop' && reason === undefined)
    tell({
      code: 'stop-without-reason',
      path: `${path}.reason`,
      message: 'The way stops here and does not say why.',
      mend: 'Give a reason: what is known now, and where to look further.',
    });
  if (lead.kind === 'tree' && trees !== undefined && !trees.includes(lead.tree))
    tell({
      code: 'unknown-tree',
      path: `${path}.next`,
      value: lead.tree,
      message: `There is no tree "${lead.tree}" in the library.`,
      mend: 'Name one that is there, or stop with a reason.',
    });
}

const leads = (tree: Tree, id: string): readonly string[] =>
  (tree.checks[id]?.results ?? []).flatMap(({ next }) => (next === undefined ? [] : [next]));

/** Every check and every cause can be come to along the tree's own way. */
function lintReach(tree: Tree, tell: Tell): void {
  const reached = new Set<string>();
  const causes = new Set<string>();
  const open = [firstCheck(tree), tree.start, ...tree.baseline];
  for (let id = open.pop(); id !== undefined; id = open.pop()) {
    if (reached.has(id)) continue;
    reached.add(id);
    for (const next of leads(tree, id).map(parseNext)) {
      if (next.kind === 'check') open.push(next.check);
      if (next.kind === 'cause') causes.add(next.cause);
    }
  }
  for (const id of Object.keys(tree.checks))
    if (!reached.has(id)) tell(unreached('check', `checks.${id}`));
  for (const id of Object.keys(tree.causes))
    if (!causes.has(id)) tell(unreached('cause', `causes.${id}`));
}

const unreached = (what: 'check' | 'cause', path: string) => ({
  code: `unreached-${what}`,
  path,
  message: `No way leads to this ${what}.`,
  mend: what === 'check' ? 'Let a result lead to it.' : 'Let a result condemn it (cause:ID).',
});

/** A circle of checks: with nothing changed, the same answers would go round for ever. */
function lintLoops(tree: Tree, tell: Tell): void {
  const done = new Set<string>();
  const walk = (id: string, path: readonly string[]): void => {
    if (path.includes(id)) {
      const circle = [...path.slice(path.indexOf(id)), id];
      tell({
        code: 'loop',
        path: `checks.${id}`,
        value: circle.join(' -> '),
        message: 'The way comes back to a check with nothing changed between.',
        mend: 'Let one of these results lead out.',
      });
      return;
    }
    if (done.has(id)) return;
    for (const next of leads(tree, id).map(parseNext))
      if (next.kind === 'check') walk(next.check, [...path, id]);
    done.add(id);
  };
  walk(firstCheck(tree), []);
  walk(tree.start, []);
}
