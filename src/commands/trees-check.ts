import { basename } from 'node:path';
import { showProblem, type Problem } from '../core/problem.ts';
import { cleanLine, count } from '../core/text.ts';
import { lintLibrary, lintTree } from '../core/tree/lint.ts';
import { loadTree, type Library } from '../store/library.ts';
import { fail, printJson, type ExitCode, type Io } from './io.ts';
import { openLibrary } from './library.ts';
import { absolute, firstOf, type Given } from './options.ts';

/** `droplight trees check [FILES]`: everything that is wrong, one line each. 1 when there is any. */
export function checkTrees(io: Io, given: Given, files: readonly string[]): ExitCode {
  const library = openLibrary(io, given);
  if (library.kind === 'bad') return fail(io, firstOf(library.problems));
  const problems =
    files.length === 0
      ? allProblems(library.value)
      : files.flatMap((file) => fileProblems(io, absolute(io, file), library.value));
  if (given.flag('json')) printJson(io, problems);
  else
    for (const problem of problems)
      io.out(`${cleanLine(showProblem(problem))} [${problem.code}]\n`);
  if (!given.flag('json'))
    io.out(
      problems.length === 0 ? 'No problem found.\n' : `${count(problems.length, 'problem')}.\n`,
    );
  return problems.length === 0 ? 0 : 1;
}

const idsOf = ({ trees }: Library): readonly string[] => trees.map(({ id }) => id);

const allProblems = (library: Library): readonly Problem[] => [
  ...library.problems.map((problem) => ({
    ...problem,
    ...(problem.file !== undefined && { file: basename(problem.file) }),
  })),
  ...library.trees.flatMap((tree) => lintTree(tree, `${tree.id}.json`, idsOf(library))),
  ...lintLibrary(library.trees),
];

function fileProblems(io: Io, path: string, library: Library): readonly Problem[] {
  const tree = loadTree(io.disk.files, path, library.shop);
  return tree.kind === 'bad' ? tree.problems : lintTree(tree.value, path, idsOf(library));
}
