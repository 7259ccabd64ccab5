// Makes the example sessions of our own scenario, an orchard's delivery van: the commands that a
// person would use, in a folder of their own, with a clock that goes on by the minutes in the script.
import { mkdirSync, readdirSync, rmSync, unlinkSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { enter } from '../src/commands/enter.ts';
import { runCommand } from '../src/commands/io.ts';
import { open } from '../src/commands/open.ts';
import { write } from '../src/commands/write.ts';
import { good } from '../src/core/problem.ts';
import { nodeFiles } from '../src/store/node-files.ts';
import { examples } from './example-scripts.mjs';
import { root } from './setup.mjs';

const folder = resolve(root, 'sessions', 'examples');
rmSync(folder, { recursive: true, force: true });
mkdirSync(folder, { recursive: true });

for (const { name, tree, args, begins, actions } of examples) {
  const clock = { minute: 0, seconds: 0 };
  const answers = [];
  const io = {
    out: () => {},
    err: (text) => process.stderr.write(text),
    clock: () => {
      clock.seconds += 1;
      const seconds = clock.minute * 60 + clock.seconds;
      const at = new Date(Date.parse(begins) + seconds * 1000).toISOString().replace('Z', '+00:00');
      return { at, run: `${name}-1`, mono: seconds * 1000, up: 40_000 + seconds };
    },
    lines: async function* lines() {
      for (const [minutes, action] of actions) {
        clock.minute += minutes;
        // `last` stands for the event that the step before was kept as.
        const said = action.n === 'last' ? { ...action, n: answers.at(-1).n } : action;
        yield good(JSON.stringify(said));
      }
    },
    disk: {
      files: nodeFiles,
      notes: { read: () => undefined, write: () => {} },
      holder: 'examples',
    },
    folders: { current: root, shipped: resolve(root, 'trees'), settings: resolve(folder, 'none') },
    onHangUp: () => {},
    isTerminal: false,
  };
  const paths = [];
  const opened = await runCommand({ ...io, out: (text) => paths.push(text.trim()) }, open, [
    // One that no tree is about is told in own words, among the arguments.
    ...(tree === undefined ? [] : [tree]),
    ...args,
    '--sessions',
    folder,
  ]);
  const entered = await runCommand(
    { ...io, out: (text) => answers.push(JSON.parse(text)) },
    enter,
    paths,
  );
  const refused = answers.filter(({ ok }) => !ok);
  if (opened !== 0 || entered !== 0)
    throw new Error(`${name}: ${JSON.stringify(refused, null, 2)}`);
  await runCommand(io, write, paths);
  // Each example stands by itself: none begins with what another told of the vehicle.
  rmSync(join(folder, 'vehicles'), { recursive: true, force: true });
}
for (const file of readdirSync(folder)) if (file.endsWith('.lock')) unlinkSync(join(folder, file));
