import { render } from 'ink';
import type { Message } from '../app/message.ts';
import type { Program } from '../app/program.ts';
import type { Inner } from './inner.tsx';
import { Root } from './root.tsx';

export type Doors = { readonly redraw: () => void; readonly leave: () => void };

/** A program that shows its first state already, and how to wake it: what is inside its frames comes with that. */
export type Begun = { readonly program: Program; readonly wake: () => Promise<Inner> };

/** How often the clock on the screen goes on, in milliseconds. */
const tick = 15_000;

/** Shows the program on this terminal until it leaves, and then shuts its session. */
export async function stage(
  begin: (doors: Doors) => Begun,
  openings: readonly Message[],
): Promise<void> {
  const doors = { redraw: () => {}, leave: () => {} };
  const { program, wake } = begin({ redraw: () => doors.redraw(), leave: () => doors.leave() });
  for (const message of openings) program.dispatch(message);
  // With nothing to open Home is drawn first, and the larger part of the program loads behind it.
  const inner = openings.length > 0 ? await wake() : undefined;
  let lendInner = (_: Inner): void => {};
  const ink = render(
    <Root
      state={program.state}
      subscribe={program.subscribe}
      dispatch={program.dispatch}
      waitForInner={(lend) => {
        lendInner = lend;
      }}
      inner={inner}
      lendRedraw={(redraw) => {
        doors.redraw = redraw;
      }}
    />,
    {
      alternateScreen: true,
      incrementalRendering: true,
      maxFps: 60,
      exitOnCtrlC: false,
      patchConsole: false,
      // The default looks at CI in the environment; whether this is a terminal was asked already.
      interactive: true,
    },
  );
  doors.leave = () => ink.unmount();
  const ticking = setInterval(() => program.dispatch({ kind: 'ticked' }), tick);
  try {
    // Loading takes the processor: what is on its way to the terminal is written first.
    await ink.waitUntilRenderFlush();
    if (inner === undefined) lendInner(await wake());
    await ink.waitUntilExit();
  } finally {
    clearInterval(ticking);
    program.shut();
  }
}
