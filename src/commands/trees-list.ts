import { showProblem } from '../core/problem.ts';
import { cleanLine } from '../core/text.ts';
import { fail, printJson, type ExitCode, type Io } from './io.ts';
import { openLibrary } from './library.ts';
import { firstOf, type Given } from './options.ts';

/** `droplight trees list`: the trees of the library, and what is wrong with files that are none. */
export function listTrees(io: Io, given: Given): ExitCode {
  const library = openLibrary(io, given);
  if (library.kind === 'bad') return fail(io, firstOf(library.problems));
  const lines = library.value.trees.map(({ id, title, causes, checks }) => ({
    id,
    title,
    causes: Object.keys(causes).length,
    checks: Object.keys(checks).length,
  }));
  if (given.flag('json')) printJson(io, lines);
  else
    for (const { id, title, causes, checks } of lines)
      io.out(`${id.padEnd(14)} ${cleanLine(title)} (${causes} causes, ${checks} checks)\n`);
  for (const problem of library.value.problems) io.err(`${cleanLine(showProblem(problem))}\n`);
  return library.value.problems.length > 0 ? 1 : 0;
}
