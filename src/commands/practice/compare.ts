import { showMarkdown } from '../../core/account/forms/markdown.ts';
import { bad, good, type Parsed } from '../../core/problem.ts';
import { recordWarning } from '../../core/session/record/damage.ts';
import { paragraph } from '../../core/account/block.ts';
import { classBlocks, classCsv } from '../../core/review/practice/class-blocks.ts';
import { classOf, type Practised } from '../../core/review/practice/class.ts';
import { sha256 } from '../../store/recover.ts';
import { sessionName } from '../../store/find.ts';
import { loadSession } from '../../store/sessions.ts';
import { done, printJson, type Ended, type Io } from '../io.ts';
import { readOptions, wrongUse } from '../options.ts';
import { namedSessions } from '../session.ts';
import { callOf, uses } from '../uses.ts';

/** `droplight practice compare SESSION...`: those who had the same fault, side by side. */
export async function compare(io: Io, args: readonly string[]): Promise<Ended> {
  const given = readOptions(args, uses.practice.options);
  if (given.kind === 'bad') return given;
  const as = given.value.text('as') ?? 'md';
  if (as !== 'md' && as !== 'json' && as !== 'csv')
    return wrongUse('A comparison is told as md, json or csv.', callOf('practice'));
  const paths = namedSessions(io, given.value, callOf('practice'));
  if (paths.kind === 'bad') return paths;
  const read = readAll(io, paths.value);
  if (read.kind === 'bad') return read;
  const { practices, warnings } = read.value;
  const faults = classOf(practices, sha256);
  if (faults.length === 0) return bad(noPractice);
  if (as === 'json') printJson(io, { warnings, faults });
  else if (as === 'csv') io.out(classCsv(faults));
  else io.out(showMarkdown([...warnings.map(paragraph), ...classBlocks(faults)]));
  return done;
}

type Read = { readonly practices: readonly Practised[]; readonly warnings: readonly string[] };

/** The sessions with what must be known of their records first. */
function readAll(io: Io, paths: readonly string[]): Parsed<Read> {
  const practices: Practised[] = [];
  const warnings: string[] = [];
  for (const path of paths) {
    const loaded = loadSession(io.disk.files, path);
    if (loaded.kind === 'bad') return loaded;
    const warning = recordWarning(loaded.value.damage);
    if (warning !== undefined) warnings.push(`${sessionName(path)}: ${warning}`);
    practices.push({ session: sessionName(path), recorded: loaded.value });
  }
  return good({ practices, warnings });
}

const noPractice = {
  code: 'no-practice',
  message: 'None of these sessions is practice on a hidden fault.',
  mend: 'Name sessions that were begun with "droplight practice".',
};
