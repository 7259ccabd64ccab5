import { historyOf, type History } from '../../core/jobs/history.ts';
import { historyLines } from '../../core/jobs/words.ts';
import { bad, good, showProblem, type Parsed } from '../../core/problem.ts';
import { cleanLine, cleanRow } from '../../core/text.ts';
import { attempt } from '../../store/files.ts';
import { loadJobs, type Jobs } from '../../store/jobs.ts';
import { done, printJson, type Ended, type Io } from '../io.ts';
import { readOptions, sessionsFolder, wrongUse } from '../options.ts';
import { teller } from '../program/progress.ts';
import { callOf, uses } from '../uses.ts';

/** Fewer sessions than this are read before anybody could look. */
const toldFrom = 100;

/** `droplight history [TREE | WORDS]`: what all the jobs of the folder come to. */
export async function history(io: Io, args: readonly string[]): Promise<Ended> {
  const given = readOptions(args, uses.history.options);
  if (given.kind === 'bad') return given;
  const [about = '', ...more] = given.value.words;
  if (more.length > 0)
    return wrongUse('Give one tree, or words of a complaint in quotes.', callOf('history'));
  const folder = sessionsFolder(io, given.value);
  const jobs = readJobs(io, folder, given.value.flag('afresh'));
  if (jobs.kind === 'bad') return jobs;
  const all = historyOf(jobs.value.jobs, about);
  if (about !== '' && all.complaints.length === 0) return bad(noSuchComplaint(about));
  if (given.value.flag('json')) printJson(io, asJson(folder, all));
  else if (all.sessions === 0) io.out(`${cleanRow(`There is no session in ${folder} yet.`)}\n`);
  else io.out(`${historyLines(all).map(cleanRow).join('\n')}\n`);
  return done;
}

/** The jobs of a folder; a long reading is told of while it goes on, an index not kept when it is over. */
export function readJobs(io: Io, folder: string, afresh = false): Parsed<Jobs> {
  const { tell, end } = teller(io, 'Reading sessions');
  const jobs = attempt(folder, () =>
    loadJobs(io.disk.files, folder, {
      afresh,
      tell: (progress) => progress.of >= toldFrom && tell(progress),
    }),
  );
  end();
  if (jobs.kind === 'bad') return jobs;
  const { trouble } = jobs.value;
  if (trouble !== undefined)
    io.err(`${cleanLine(`The index was not kept: ${showProblem(trouble)}`)}\n`);
  return good(jobs.value);
}

const noSuchComplaint = (value: string) => ({
  code: 'no-such-complaint',
  value,
  message: `No job here has a complaint "${value}".`,
  mend: '"droplight history" shows all; name one by its tree, or by words of its title.',
});

/** The same as one document: minutes and shares unrounded. */
const asJson = (folder: string, all: History) => ({ folder, ...all });
