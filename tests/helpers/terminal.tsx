import { PassThrough, Writable } from 'node:stream';
import xterm from '@xterm/headless';
import { render } from 'ink';
import type { Program } from '../../src/app/program.ts';
import { contents } from '../../src/screens/contents.tsx';
import { Root } from '../../src/screens/root.tsx';

export type Terminal = {
  /** What a person would see, row by row, without the blanks at the end. */
  readonly screen: () => readonly string[];
  /** Sends bytes in the pieces given, each as one read. */
  readonly send: (...pieces: readonly (string | Uint8Array)[]) => Promise<void>;
  readonly resize: (columns: number, rows: number) => Promise<void>;
  readonly stop: () => Promise<void>;
};

/** Shows a program in a terminal inside this process: a real emulator, no pseudo-terminal. */
export async function showIn(
  program: Pick<Program, 'state' | 'subscribe' | 'dispatch'>,
  columns = 80,
  rows = 24,
  halt: () => Promise<void> = () => Promise.resolve(),
): Promise<Terminal> {
  const emulator = new xterm.Terminal({ cols: columns, rows, allowProposedApi: true });
  const stdout = Object.assign(
    new Writable({
      decodeStrings: false,
      write: (chunk: unknown, _, done) =>
        emulator.write(String(chunk).replace(/(?<!\r)\n/g, '\r\n'), done),
    }),
    { isTTY: true, columns, rows },
  );
  const stdin = Object.assign(new PassThrough(), {
    isTTY: true,
    setRawMode: () => stdin,
    ref: () => stdin,
    unref: () => stdin,
  });
  const app = render(
    <Root
      state={program.state}
      subscribe={program.subscribe}
      dispatch={program.dispatch}
      halt={halt}
      lend={() => {}}
      contents={contents}
    />,
    {
      stdout: stdout as unknown as NodeJS.WriteStream,
      stdin: stdin as unknown as NodeJS.ReadStream,
      interactive: true,
      exitOnCtrlC: false,
      patchConsole: false,
      maxFps: 1000,
    },
  );
  const settle = async () => {
    await new Promise((done) => setTimeout(done));
    await app.waitUntilRenderFlush();
    await new Promise<void>((done) => emulator.write('', done));
  };
  await settle();
  return {
    screen: () =>
      Array.from({ length: emulator.rows }, (_, row) =>
        (
          emulator.buffer.active
            .getLine(emulator.buffer.active.viewportY + row)
            ?.translateToString(true, 0, emulator.cols) ?? ''
        ).trimEnd(),
      ),
    send: async (...pieces) => {
      for (const piece of pieces) {
        stdin.write(piece);
        // The next piece is another read, and comes at once: an Escape left alone for 20 ms is a key.
        await new Promise((done) => process.nextTick(done));
        await new Promise((done) => process.nextTick(done));
      }
      // A lone Escape is held for some 20 ms, in case more of a sequence comes.
      await new Promise((done) => setTimeout(done, 40));
      await settle();
    },
    resize: async (wide, high) => {
      emulator.resize(wide, high);
      Object.assign(stdout, { columns: wide, rows: high });
      stdout.emit('resize');
      await settle();
    },
    stop: async () => {
      app.unmount();
      await settle();
      emulator.dispose();
    },
  };
}
