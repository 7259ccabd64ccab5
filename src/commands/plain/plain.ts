import { bad } from '../../core/problem.ts';
import { refusal, storeError } from '../../store/files.ts';
import { done, type Ended, type Io } from '../io.ts';
import { parting } from '../program/parting.ts';
import { readOptions, sessionsFolder } from '../options.ts';
import { begin, openingsFor, tellRescued, type First } from '../program/program.ts';
import { screenUses } from '../uses.ts';
import { Talk } from './talk.ts';

/** `droplight --plain`: the same program as questions and lines, without a window and without an escape code. */
export async function plain(io: Io, args: readonly string[], first: First): Promise<Ended> {
  const given = readOptions(args, screenUses.start.options);
  if (given.kind === 'bad') return given;
  const openings = await openingsFor(io, given.value, first);
  if (openings.kind === 'bad') return openings;

  const talk = new Talk(io);
  const { written, follow, words } = parting(io, given.value);
  const { program, load } = begin(io, given.value, first, { ...talk.hands, written });
  follow(program);
  io.onHangUp(() => {
    talk.leave(program);
    io.out(`\n${words()}`);
  }, 'lines');
  for (const message of openings.value) program.dispatch(message);
  try {
    await talk.hold(program, await load());
    io.out(words());
  } catch (error) {
    return bad(refusal(storeError(error, sessionsFolder(io, given.value))));
  }
  return talk.rescued === undefined ? done : tellRescued(io, talk.rescued);
}
