import { firstOf } from '../core/problem.ts';
import { fold } from '../core/session/fold.ts';
import { isPractice } from '../core/session/header/is-practice.ts';
import { stateOf, type RecordState } from '../core/session/record/damage.ts';
import { attempt } from '../store/files.ts';
import { currentLeg } from '../core/session/story.ts';
import { cleanRow } from '../core/text.ts';
import { listSessions, type Listed } from '../store/find.ts';
import { loadSession } from '../store/sessions.ts';
import { done, printJson, type Ended, type Io } from './io.ts';
import { readOptions, sessionsFolder, wrongUse } from './options.ts';
import { callOf, uses } from './uses.ts';

/** `droplight sessions`: the sessions of the folder, newest first. */
export async function sessions(io: Io, args: readonly string[]): Promise<Ended> {
  const given = readOptions(args, uses.sessions.options);
  if (given.kind === 'bad') return given;
  const [surplus] = given.value.words;
  if (surplus !== undefined)
    return wrongUse(`"${surplus}" is one word too many.`, callOf('sessions'));
  const folder = sessionsFolder(io, given.value);
  const listed = attempt(folder, () => listSessions(io.disk.files, folder));
  if (listed.kind === 'bad') return listed;
  const lines = listed.value.map((one) => about(io, one));
  if (given.value.flag('json')) printJson(io, lines);
  else if (lines.length === 0) io.out(`${cleanRow(`There is no session in ${folder} yet.`)}\n`);
  else for (const line of lines) io.out(`${cleanRow(words(line))}\n`);
  return done;
}

const told = (state: RecordState): string => (state === 'whole' ? '' : `; ${state}`);

type About = {
  readonly session: string;
  readonly path: string;
  readonly vehicle?: string;
  readonly tree?: string;
  readonly practice?: true;
  readonly state: string;
};

function about(io: Io, { name, path }: Listed): About {
  const loaded = loadSession(io.disk.files, path);
  if (loaded.kind === 'bad')
    return { session: name, path, state: firstOf(loaded.problems).message };
  const { header, events, damage } = loaded.value;
  const story = fold(header, events);
  return {
    session: name,
    path,
    vehicle: story.header.vehicle.name,
    tree: currentLeg(story).tree.id,
    ...(isPractice(header) && { practice: true }),
    state: `${story.closed?.as ?? `open: ${story.due.kind}`}${told(stateOf(damage))}`,
  };
}

const words = ({ session, state, practice }: About): string =>
  `${session}  ${practice === true ? 'practice, ' : ''}${state}`;
