import { execFileSync } from 'node:child_process';
import {
  copyFileSync,
  mkdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  truncateSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import { open } from '../../src/commands/open.ts';
import { sessions } from '../../src/commands/sessions.ts';
import type { Command } from '../../src/commands/io.ts';
import { trees } from '../../src/commands/trees/trees.ts';
import { runCommand, scratch } from '../helpers/commands.ts';
import { mutated } from './sessions.ts';
import { chance, driving, hostileText, pick, type Size, type Tried } from './lib.ts';
import { watch } from './watch.ts';

const text = readFileSync('trees/no-supply.json', 'utf8');
const tree = JSON.parse(text) as object;

const many = (count: number, one: (at: number) => string): string =>
  Array.from({ length: count }, (_, at) => one(at)).join();

/** Files that are no tree and no session, by what they are. */
const odd: Readonly<Record<string, (path: string) => void>> = {
  'keys all the same': (path) => writeFileSync(path, `{${many(50_000, () => '"causes":{}')}}`),
  'a tree of many checks': (path) =>
    writeFileSync(
      path,
      text.replace('"checks": {', `"checks": {${many(1500, (at) => `"k${at}":{}`)},`),
    ),
  'a pipe': (path) => execFileSync('mkfifo', [path]),
  'a link without end': (path) => symlinkSync('/dev/zero', path),
  'a link to itself': (path) => symlinkSync(path, path),
  'a link to nothing': (path) => symlinkSync('/nowhere', path),
  'a folder': (path) => mkdirSync(path),
  'ten gigabytes of nothing': (path) => {
    writeFileSync(path, '');
    truncateSync(path, 10 * 2 ** 30);
  },
  'brackets without end': (path) => writeFileSync(path, '['.repeat(1_000_000)),
  'objects without end': (path) => writeFileSync(path, '{"a":'.repeat(200_000)),
  'a hundred thousand keys': (path) =>
    writeFileSync(path, `{${many(100_000, (at) => `"k${at}":1`)}}`),
  'one text of a megabyte': (path) => writeFileSync(path, `{"title":"${'x'.repeat(1_048_000)}"}`),
  'commas alone': (path) => writeFileSync(path, ','.repeat(500_000)),
  'comments alone': (path) => writeFileSync(path, '/*x*/'.repeat(200_000)),
  'bytes of no coding': (path) => writeFileSync(path, Buffer.alloc(5000, 0xff)),
  zeros: (path) => writeFileSync(path, Buffer.alloc(5000)),
  nothing: (path) => writeFileSync(path, ''),
};

const ask: readonly (readonly [name: string, command: Command, args: readonly string[]])[] = [
  ['list', trees, ['list']],
  ['check', trees, ['check']],
  ['open', open, ['no-supply', '--vehicle', 'x']],
  ['sessions', sessions, []],
];

/** What is wrong with how a command speaks of such a folder. */
async function wrongWith(
  told: string,
  run: () => Promise<{ readonly out: string; readonly err: string }>,
): Promise<readonly string[]> {
  try {
    const { out, err } = await run();
    const lines = err.split('\n').length;
    return [
      ...(driving.test(out + err) ? [`${told}: escape`] : []),
      ...(err.includes('fault of the program') ? [`${told}: ${err}`] : []),
      ...(lines > 40 ? [`${told}: ${lines} lines`] : []),
    ];
  } catch (error) {
    return [`${told}: crash: ${String(error)}`];
  }
}

/** Folders of trees with odd, endless and mutated files in them: told in clear lines, none of them held up by one. */
export async function hostileTrees({ seed, count }: Size): Promise<Tried> {
  const random = chance(seed);
  const failures: string[] = [];
  const slow: string[] = [];
  let longest = 0;
  for (let tries = 0; tries < count; tries += 1) {
    const folder = scratch();
    const at = join(folder, 'trees');
    mkdirSync(at);
    copyFileSync('trees/shop.json', join(at, 'shop.json'));
    const kinds = Object.keys(odd);
    const kind = tries % 2 === 0 ? (kinds[(tries / 2) % kinds.length] ?? '') : 'mutated';
    const made = odd[kind];
    writeFileSync(
      join(at, 'no-supply.json'),
      made === undefined ? JSON.stringify(mutated(tree, random)) : text,
    );
    made?.(
      join(at, `${pick(random, ['odd', 'shop2', hostileText(random).replace(/[/\0]/g, '')])}.json`),
    );
    mkdirSync(join(folder, 'sessions'));
    made?.(join(folder, 'sessions', '2026-odd.jsonl'));
    for (const [name, command, args] of ask) {
      const told = `${kind}, ${name}`;
      const spent = watch();
      failures.push(
        ...(await wrongWith(told, () => runCommand(command, [...args, '--trees', at], { folder }))),
      );
      const seconds = spent();
      longest = Math.max(longest, seconds);
      if (seconds > usual[name === 'check' ? 'check' : 'other'] + 1)
        slow.push(`${told}: ${seconds.toFixed(1)} s`);
    }
    rmSync(folder, { recursive: true });
  }
  const seen = `${Object.keys(odd).length} kinds of odd files, at most ${longest.toFixed(1)} s of the processor`;
  return { attack: 'hostile trees', tries: count * ask.length, failures, slow, seen };
}

/** Seconds that a sound tree may take: `trees check` walks it through, cold in two of them. */
const usual = { check: 4, other: 0.5 };
