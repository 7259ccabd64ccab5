import { firstOf } from '../core/problem.ts';
import { fold } from '../core/session/fold.ts';
import { currentLeg } from '../core/session/story.ts';
import { cleanRow } from '../core/text.ts';
import { listSessions, type Listed } from '../store/find.ts';
import { loadSession } from '../store/sessions.ts';
import { done, printJson, type Ended, type Io } from './io.ts';
import { readOptions, sessionsFolder } from './options.ts';

/** `droplight sessions`: the sessions of the folder, newest first. */
export async function sessions(io: Io, args: readonly string[]): Promise<Ended> {
  const given = readOptions(args, { json: 'flag' });
  if (given.kind === 'bad') return given;
  const folder = sessionsFolder(io, given.value);
  const lines = listSessions(io.disk.files, folder).map((listed) => about(io, listed));
  if (given.value.flag('json')) printJson(io, lines);
  else if (lines.length === 0) io.out(`There is no session in ${folder} yet.\n`);
  else for (const line of lines) io.out(`${cleanRow(words(line))}\n`);
  return done;
}

type About = {
  readonly session: string;
  readonly path: string;
  readonly vehicle?: string;
  readonly tree?: string;
  readonly state: string;
};

function about(io: Io, { name, path }: Listed): About {
  const loaded = loadSession(io.disk.files, path);
  if (loaded.kind === 'bad')
    return { session: name, path, state: firstOf(loaded.problems).message };
  const story = fold(loaded.value.header, loaded.value.events);
  return {
    session: name,
    path,
    vehicle: story.header.vehicle.name,
    tree: currentLeg(story).tree.id,
    state: story.closed?.as ?? `open: ${story.due.kind}`,
  };
}

const words = ({ session, state }: About): string => `${session}  ${state}`;
