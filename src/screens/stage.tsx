import { render } from 'ink';
import type { Message } from '../app/message.ts';
import type { Program } from '../app/program.ts';
import type { Contents } from './contents.tsx';
import { Root } from './root.tsx';

export type Controls = {
  readonly redraw: () => void;
  readonly ring: () => void;
  readonly leave: () => void;
  /** Gives the terminal back and stops, as the shell's own key does. */
  readonly stop: () => void;
};

/** A program that shows its first state already, and how to load the rest of it. */
export type Begun = { readonly program: Program; readonly load: () => Promise<Contents> };

/** How often the clock on the screen goes on, in milliseconds. */
const tick = 15_000;

/** Shows the program on this terminal until it leaves, and then shuts its session. */
export async function stage(
  begin: (controls: Controls) => Begun,
  openings: readonly Message[],
  halt: () => Promise<void>,
): Promise<void> {
  const controls = { redraw: () => {}, ring: () => {}, leave: () => {}, stop: () => {} };
  const { program, load } = begin({
    redraw: () => controls.redraw(),
    ring: () => controls.ring(),
    leave: () => controls.leave(),
    stop: () => controls.stop(),
  });
  for (const message of openings) program.dispatch(message);
  const root = (contents: Contents | undefined) => (
    <Root
      state={program.state}
      subscribe={program.subscribe}
      dispatch={program.dispatch}
      contents={contents}
      halt={halt}
      lend={({ redraw, ring, stop }) => {
        controls.redraw = redraw;
        controls.ring = ring;
        controls.stop = stop;
      }}
    />
  );
  // With nothing to open Home is drawn first, and the larger part of the program loads behind it.
  const loaded = openings.length > 0 ? await load() : undefined;
  const ink = render(root(loaded), {
    alternateScreen: true,
    incrementalRendering: true,
    maxFps: 60,
    exitOnCtrlC: false,
    patchConsole: false,
    // The default looks at CI in the environment; whether this is a terminal was asked already.
    interactive: true,
  });
  controls.leave = () => ink.unmount();
  const ticking = setInterval(() => program.dispatch({ kind: 'ticked' }), tick);
  try {
    // Loading takes the processor: what is on its way to the terminal is written first.
    await ink.waitUntilRenderFlush();
    if (loaded === undefined) ink.rerender(root(await load()));
    await ink.waitUntilExit();
  } finally {
    clearInterval(ticking);
    program.shut();
  }
}
