// Makes the example sessions of our own scenario, an orchard's delivery van: the commands that a
// person would use, in a folder of their own, with a clock that goes on by the minutes in the script.
import { mkdirSync, mkdtempSync, readdirSync, rmSync, unlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { enter } from '../src/commands/enter.ts';
import { runCommand } from '../src/commands/io.ts';
import { open } from '../src/commands/open.ts';
import { vehicles } from '../src/commands/vehicles.ts';
import { write } from '../src/commands/write.ts';
import { good } from '../src/core/problem.ts';
import { nodeFiles } from '../src/store/node-files.ts';
import { drawnPicture } from '../tests/helpers/drawn-picture.ts';
import { examples } from './example-scripts.mjs';
import { weekend } from './example-weekend.mjs';
import { root } from './setup.mjs';

const folder = resolve(root, 'sessions', 'examples');
rmSync(folder, { recursive: true, force: true });
mkdirSync(folder, { recursive: true });

/** Pictures that stand in for photos, where the commands look for them. */
const pictures = mkdtempSync(join(tmpdir(), 'pictures-'));

function pictureFile(words) {
  const file = join(pictures, `${words.replaceAll(' ', '-')}.png`);
  writeFileSync(file, drawnPicture(words));
  return file;
}

/** Steps as the commands take them: a photo by its file, and `last` for the event of the step before. */
function asSaid({ picture, ...action }, answers) {
  const said = picture === undefined ? action : { ...action, file: pictureFile(picture) };
  return action.n === 'last' ? { ...said, n: answers.at(-1).n } : said;
}

/** The program at a machine whose clock goes on by the minutes of the script. */
function machine({ begins, actions }, run, answers) {
  const clock = { minute: 0, seconds: 0 };
  return {
    out: () => {},
    err: (text) => process.stderr.write(text),
    clock: () => {
      clock.seconds += 1;
      const seconds = clock.minute * 60 + clock.seconds;
      const at = new Date(Date.parse(begins) + seconds * 1000).toISOString().replace('Z', '+00:00');
      return { at, run, mono: seconds * 1000, up: 40_000 + seconds };
    },
    lines: async function* lines() {
      for (const [minutes, action] of actions) {
        clock.minute += minutes;
        yield good(JSON.stringify(asSaid(action, answers)));
      }
    },
    disk: {
      files: nodeFiles,
      notes: { read: () => undefined, write: () => {} },
      holder: 'examples',
    },
    folders: {
      current: root,
      shipped: resolve(root, 'trees'),
      settings: resolve(folder, 'none'),
      sessions: folder,
    },
    onHangUp: () => {},
    isTerminal: false,
  };
}

for (const { name, tree, args, vehicle, ...script } of [...examples, weekend]) {
  const openings = script.openings ?? [script];
  const answers = [];
  const [first] = openings.map((opening, at) => machine(opening, `${name}-${at + 1}`, answers));
  const ended = [];
  if (vehicle !== undefined)
    ended.push(
      await runCommand(first, vehicles, ['new', args[1], ...vehicle, '--sessions', folder]),
    );
  const paths = [];
  const start = { ...first, out: (text) => paths.push(text.trim()) };
  ended.push(
    await runCommand(start, open, [
      ...(tree === undefined ? [] : [tree]),
      ...args,
      '--sessions',
      folder,
    ]),
  );
  for (const [at, opening] of openings.entries()) {
    const io = at === 0 ? first : machine(opening, `${name}-${at + 1}`, answers);
    ended.push(
      await runCommand({ ...io, out: (text) => answers.push(JSON.parse(text)) }, enter, paths),
    );
  }
  const refused = answers.filter(({ ok }) => !ok);
  if (ended.some((code) => code !== 0))
    throw new Error(`${name}: ${JSON.stringify(refused, null, 2)}`);
  await runCommand(first, write, paths);
  // Each example stands by itself: none begins with what another told of the vehicle.
  rmSync(join(folder, 'vehicles'), { recursive: true, force: true });
}
rmSync(pictures, { recursive: true });
for (const file of readdirSync(folder)) if (file.endsWith('.lock')) unlinkSync(join(folder, file));
