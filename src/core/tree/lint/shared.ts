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
 * What only all trees together show: a check that two trees share by its id, with other results or
 * another content. A finding goes over from one tree to the other by these ids.
 */
export function lintLibrary(files: readonly TreeFile[]): Problem[] {
  const ids = files.map(({ file, tree }) => ({ file, id: tree.id }));
  const problems = idsTwice(ids).filter((one) => one !== undefined);
  const first = new Map<string, readonly [tree: string, check: Check]>();
  for (const { file, tree } of files)
    for (const [id, check] of Object.entries(tree.checks)) {
      const other = first.get(id);
      if (other === undefined) first.set(id, [tree.id, check]);
      else problems.push(...clash(id, check, other).map((problem) => ({ ...problem, file })));
    }
  return problems;
}

function clash(
  id: string,
  check: Check,
  [tree, other]: readonly [tree: string, check: Check],
): readonly Problem[] {
  const resultsOf = ({ results }: Check): string => results.map((result) => result.id).join(', ');
  if (resultsOf(check) !== resultsOf(other))
    return [
      {
        code: 'shared-results',
        path: `checks.${id}.results`,
        value: resultsOf(check),
        message: `In the tree "${tree}" this check has other results: ${resultsOf(other)}.`,
        mend: 'Give it the same results there and here, or another id.',
      },
    ];
  const differing = contents.filter(({ of }) => told(of(check)) !== told(of(other)));
  const [{ path, of } = { path: '', of: () => '' }] = differing;
  return differing.length === 0
    ? []
    : [
        {
          code: 'shared-differs',
          path: `checks.${id}.${path}`,
          value: told(of(check)),
          message: `In the tree "${tree}" this check has another content (${differing.map(({ name }) => name).join(', ')}): ${told(of(other))}. What is found here would count there.`,
          mend: 'Make it the same there and here, or give it another id.',
        },
      ];
}

const told = (content: unknown): string =>
  typeof content === 'string' ? content : (JSON.stringify(content) ?? 'none');

/** What two checks of one id must have in common for a finding to mean the same. */
const contents: readonly {
  readonly name: string;
  readonly path: string;
  readonly of: (check: Check) => unknown;
}[] = [
  { name: 'question', path: 'ask', of: ({ ask }) => ask },
  {
    name: 'unit',
    path: 'reading.unit',
    of: ({ reading }) => reading && [reading.quantity, reading.unit],
  },
  { name: 'judge', path: 'judge', of: ({ judge, readings }) => judge && [judge, readings?.length] },
  {
    name: 'bands',
    path: 'results',
    of: ({ results }) => results.map(({ from, below }) => [from ?? null, below ?? null]),
  },
  {
    name: 'station',
    path: 'feed',
    of: ({ feed }) => feed && [feed.station, feed.against, feed.reads, feed.load.toSorted()],
  },
  {
    name: 'standing',
    path: 'standing',
    // How warm it is may differ: one tree comes to the check by a hot stop, the other does not.
    of: ({ standing: { battery, key, engine } }) => [battery, key, engine],
  },
];

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
