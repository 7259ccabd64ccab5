import * as fs from 'node:fs';
import { dirname, join } from 'node:path';
import { nodeFiles } from '../../src/store/node-files.ts';
import { openSession } from '../../src/store/sessions.ts';
import { note, readBack, sessionLines } from '../helpers/session-file.ts';
import { chance, folderFor, pick, type Size, type Tried } from './lib.ts';

type Deed = (path: string, count: number) => void;

const replace = (path: string, how: (fresh: string) => void): void => {
  how(`${path}.sync`);
  fs.renameSync(`${path}.sync`, path);
};

const deeds: Readonly<Record<string, Deed>> = {
  nothing: () => {},
  removed: (path) => fs.rmSync(path, { force: true }),
  moved: (path, count) => fs.renameSync(path, `${path}.moved-${count}`),
  'folder gone': (path) => fs.rmSync(dirname(path), { recursive: true, force: true }),
  'folder moved': (path, count) => fs.renameSync(dirname(path), `${dirname(path)}-${count}`),
  emptied: (path) => fs.truncateSync(path, 0),
  cut: (path) => fs.truncateSync(path, Math.max(0, fs.statSync(path).size - 20)),
  'written to': (path) => fs.appendFileSync(path, '{"n":9'),
  'replaced by a copy': (path) => replace(path, (fresh) => fs.copyFileSync(path, fresh)),
  'replaced by another': (path) => replace(path, (fresh) => fs.writeFileSync(fresh, 'precious')),
  'replaced by a link': (path) => replace(path, (fresh) => fs.symlinkSync('/dev/null', fresh)),
  'replaced by a folder': (path) => {
    fs.rmSync(path);
    fs.mkdirSync(path);
  },
  'linked twice': (path, count) => fs.linkSync(path, `${path}.twin-${count}`),
  'lock removed': (path) => fs.rmSync(`${path}.lock`, { force: true }),
  'fresh is a link': (path) => fs.symlinkSync('/dev/null', `${path}.fresh`),
};

/** Does it, and tells it; what the system does not let be done is told as that. */
function doOne(name: string, path: string, count: number): string {
  try {
    deeds[name]?.(path, count);
    return name;
  } catch {
    return `${name} (not possible)`;
  }
}

/** Random deeds to an open session file, answers between them; at the end everything acknowledged must be there. */
export function deedsWhileOpen({ seed, count }: Size): Tried {
  const random = chance(seed);
  const failures: string[] = [];
  let [acknowledged, refused] = [0, 0];
  for (let tries = 0; tries < count; tries += 1) {
    const folder = join(folderFor('deeds'), 'sessions');
    nodeFiles.makeFolder(folder);
    const path = join(folder, 'job.jsonl');
    fs.writeFileSync(path, sessionLines([]).join(''));
    const done: string[] = [];
    const kept: number[] = [];
    const opened = openSession({ files: nodeFiles, holder: 'torture' }, path, {
      kept: () => {},
      trouble: () => {},
    });
    if (opened.kind === 'bad') throw new Error('a good session does not open');
    for (let step = 0; step < 6; step += 1) {
      done.push(doOne(pick(random, Object.keys(deeds)), path, step));
      if (random() < 0.2) continue;
      try {
        opened.value.journal.commit([note(kept.length + 1)]);
        kept.push(kept.length + 1);
      } catch {
        refused += 1;
      }
    }
    opened.value.release();
    acknowledged += kept.length;
    const { events = [], damage = [] } = fs.existsSync(path) ? readBack(fs.readFileSync(path)) : {};
    if (events.join() !== kept.join() || damage.length > 0)
      failures.push(
        `${done.join(', ')}: kept ${kept.join()}, found ${events.join()} ${damage.join()}`,
      );
    fs.rmSync(dirname(folder), { recursive: true });
  }
  return {
    attack: 'deeds while open',
    tries: count,
    failures,
    seen: `${acknowledged} acknowledged, ${refused} refused`,
  };
}
