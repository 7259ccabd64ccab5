import { historyOf } from '../../core/jobs/history.ts';
import { historyLines } from '../../core/jobs/words.ts';
import type { Files } from '../../store/files.ts';
import { sessionLines } from '../../store/find.ts';
import { jobsIn, type Jobs } from '../../store/jobs.ts';
import type { Effect } from '../effect.ts';
import type { Program } from '../program.ts';

type Asked = Extract<Effect, { kind: 'list-sessions' | 'read-jobs' }>;
type Place = { readonly files: Files; readonly folder: string };

/** What is asked of all sessions of the folder. */
export function onSessions({ kind }: Asked, { files, folder }: Place, program: Program): void {
  if (kind === 'list-sessions')
    program.dispatch({ kind: 'sessions-listed', sessions: sessionLines(files, folder) });
  else readOn(jobsIn(files, folder, {}), program);
}

/** Sessions read between two looks at the keys. */
const atOnce = 8;

/** Reads behind the keys, telling how far it is; who leaves the page stops it. */
function readOn(reading: ReturnType<typeof jobsIn>, program: Program): void {
  if (program.state().screen.kind !== 'jobs') return;
  for (let read = 0; read < atOnce; read += 1) {
    const step = reading.next();
    if (step.done === true)
      return program.dispatch({ kind: 'jobs-read', lines: linesOf(step.value) });
    if (read > 0) continue;
    const { done, of } = step.value;
    program.dispatch({ kind: 'jobs-read', lines: [`Reading sessions: ${done} of ${of}`] });
  }
  setImmediate(() => readOn(reading, program));
}

const linesOf = ({ jobs }: Jobs): readonly string[] =>
  jobs.length === 0 ? ['There is no session here yet.'] : historyLines(historyOf(jobs));
