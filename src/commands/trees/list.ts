import { bad, good, showProblem } from '../../core/problem.ts';
import { groupWord } from '../../core/tree/groups.ts';
import { cleanLine } from '../../core/text.ts';
import { loadHeadings } from '../../store/headings.ts';
import { printJson, type Ended, type Io } from '../io.ts';
import { noTrees, treesFolder, wrongUse, type Given } from '../options.ts';

/** `droplight trees list [--json]`: the trees of the library by name, and files that have none. */
export function listTrees(io: Io, given: Given, [surplus]: readonly string[]): Ended {
  if (surplus !== undefined)
    return wrongUse(`"${surplus}" is one word too many.`, 'droplight trees list [--json]');
  const folder = treesFolder(io, given);
  if (!io.disk.files.exists(folder)) return bad(noTrees(folder));
  const { headings, problems } = loadHeadings(io.disk.files, folder);
  if (given.flag('json')) printJson(io, headings);
  else
    for (const heading of headings)
      io.out(
        `${cleanLine(heading.id).padEnd(14)} ${cleanLine(groupWord(heading)).padEnd(10)} ${cleanLine(heading.title)}\n`,
      );
  for (const problem of problems) io.err(`${cleanLine(showProblem(problem))}\n`);
  return good(problems.length > 0 ? 1 : 0);
}
