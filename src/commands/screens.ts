import type { Rescued } from '../app/run/ports.ts';
import { bad } from '../core/problem.ts';
import { stage, type Begun, type Controls } from '../screens/stage.tsx';
import { refusal, storeError } from '../store/files.ts';
import { done, type Ended, type Io } from './io.ts';
import { parting } from './program/parting.ts';
import { readOptions, sessionsFolder } from './options.ts';
import { begin, onHangUp, openingsFor, tellRescued, type First } from './program/program.ts';
import { screenUses } from './uses.ts';

const noTerminal = {
  code: 'no-terminal',
  message: 'The screens need a terminal on both ends.',
  mend: 'Without one add --plain (line by line), or use "droplight open", "droplight enter" and "droplight write".',
};

/** `droplight`, `droplight start [TREE]`, `droplight resume [SESSION]`: the screens. */
export async function screens(io: Io, args: readonly string[], first: First): Promise<Ended> {
  const given = readOptions(args, screenUses.start.options);
  if (given.kind === 'bad') return given;
  if (!io.isTerminal) return bad(noTerminal);
  const openings = await openingsFor(io, given.value, first);
  if (openings.kind === 'bad') return openings;

  let rescued: Rescued | undefined;
  const handOver = (one: Rescued) => {
    rescued = one;
  };
  const { written, follow, words } = parting(io, given.value);
  const begun = (controls: Controls): Begun => {
    const one = begin(io, given.value, first, { ...handsOf(controls), handOver, written });
    follow(one.program);
    io.onStop(controls.stop, controls.redraw);
    onHangUp(io, one.program, () => {
      controls.leave();
      io.out(words());
    });
    return one;
  };
  try {
    await stage(begun, openings.value, io.halt);
    io.out(words());
  } catch (error) {
    return bad(refusal(storeError(error, sessionsFolder(io, given.value))));
  }
  return rescued === undefined ? done : tellRescued(io, rescued);
}

const handsOf = ({ redraw, ring, leave }: Controls) => ({ redraw, ring, leave });
