import { copyFileSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { enter } from '../../src/commands/enter.ts';
import { open } from '../../src/commands/open.ts';
import { runCommand, scratch } from '../helpers/commands.ts';
import { buildApart, runProgram, type Shown } from '../helpers/pseudo-terminal.ts';
import { sleep } from './children.ts';
import { chance, driving, pick, type Size, type Tried } from './lib.ts';

/** What data would do to a terminal, in sequences that the program itself never writes. */
const hostile = [
  '\u001b]52;c;eA==\u0007',
  '\u001b]0;other title\u0007',
  '\u001b[5;9m',
  '\u001b[77;77H',
  '\u001b[?1000h',
  '\u009b5m',
  '\u0090q\u009c',
  '\u202egnp',
  '\u2066',
  '\u007f',
  '\b\b',
  '\u000e',
] as const;

/**
 * The program's own sequences: modes of the cursor, the screen, whole frames and pastes; the cursor
 * moved and lines cleared by small steps; the colours and weights of its themes.
 */
const own =
  // oxlint-disable-next-line no-control-regex -- control characters are what is looked for
  /\u001b\[\?(?:25|1049|2004|2026)[hl]|\u001b\[(?:1;1|\d{0,2})[A-HJK]|\u001b\[(?:[0-4]|7|2[2-47-9]|[34]\d|9[0-7])m|\r/g;

/** The first place where something but the program drives the terminal, with what stands around it. */
function foreign(raw: string): string | undefined {
  const rest = raw.replace(own, '');
  const at = rest.search(driving);
  return at < 0 ? undefined : JSON.stringify(rest.slice(Math.max(0, at - 20), at + 20));
}

/** What the program said: between its giving the terminal back and its last word the system itself echoes keys. */
function outOf(raw: string): string {
  const left = raw.lastIndexOf('\u001b[?1049l');
  if (left < 0) return raw;
  const last = raw.indexOf('resume with', left);
  return raw.slice(0, left) + (last < 0 ? '' : raw.slice(last));
}

/** A folder whose trees, sessions, file names, vehicle and notes are all hostile. */
async function hostileFolder(random: () => number) {
  const folder = scratch();
  const word = () => `${pick(random, hostile)}${pick(random, hostile)}x`;
  const trees = join(folder, 'trees');
  mkdirSync(trees);
  const json = JSON.parse(readFileSync('trees/no-supply.json', 'utf8'), (key, value: unknown) =>
    typeof value === 'string' && texts.has(key) ? `${value.slice(0, 30)}${word()}` : value,
  ) as object;
  writeFileSync(join(trees, 'no-supply.json'), JSON.stringify(json));
  for (const name of ['broken.json', `${word().replaceAll('/', '')}.json`])
    writeFileSync(join(trees, name), `{"id":"${word()}"`);
  const { out, code, err } = await runCommand(
    open,
    ['no-supply', '--vehicle', `van ${word()}`, '--who', word(), '--trees', trees],
    { folder },
  );
  if (code !== 0) throw new Error(`no session was begun: ${err}`);
  const path = out.trim();
  const lines = Array.from({ length: 4 }, () => JSON.stringify({ do: 'note', text: word() }));
  await runCommand(enter, [path], { folder, lines });
  for (let copies = 0; copies < 3; copies += 1)
    copyFileSync(path, join(dirname(path), `2027-${copies}-${word().replaceAll('/', '')}.jsonl`));
  return { folder, trees, path };
}

/** What a tree tells in words of its own. */
const texts = new Set(['title', 'complaint', 'label', 'told', 'ask', 'reason', 'healthy']);

const keys = [
  '\r',
  '\u001b[B',
  '\u001b[A',
  '\u001b',
  'n',
  't',
  'w',
  'x',
  'c',
  '?',
  'a',
  's',
  'b',
  'f',
  '1',
  '2',
  'y',
  'u',
  ' ',
];

/** A key, a paste of hostile text, or any bytes at all. */
function strike(shown: Shown, random: () => number): void {
  const chosen = random();
  if (chosen < 0.75) shown.strike(pick(random, keys));
  else if (chosen < 0.9) shown.strike(`\u001b[200~${pick(random, hostile)}\u001b[201~`);
  else shown.strike(Array.from({ length: 5 }, () => byte(random)).join(''));
}

/** Any byte but those that stop the program, end it, or give the terminal back for a moment to draw anew. */
const byte = (random: () => number): string =>
  // oxlint-disable-next-line no-control-regex -- control characters are what is left out
  String.fromCharCode(Math.floor(random() * 256)).replaceAll(/[\u0003\u000c\u001aq]/g, 'z');

/** Keys and bytes at random over hostile text at every door: what comes out is the program's own alone. */
export async function shownOnScreens({ seed, count }: Size): Promise<Tried> {
  const random = chance(seed);
  const failures: string[] = [];
  const program = await buildApart();
  let [struck, bytes, told] = [0, 0, 0];
  while (struck < count) {
    const { folder, trees, path } = await hostileFolder(random);
    const args = pick(random, [[], ['resume', path], ['start'], ['replay', path]]);
    const shown = runProgram(program, [...args, '--trees', trees], folder);
    await shown.until('? keys');
    for (let one = 0; one < 60 && struck < count; one += 1, struck += 1) {
      strike(shown, random);
      await sleep(15);
    }
    await sleep(200);
    shown.kill('SIGTERM');
    const code = await shown.exited;
    const raw = shown.raw();
    bytes += raw.length;
    told += raw.match(/[\u2400-\u2421\ufffd]|<U\+/g)?.length ?? 0;
    const found = foreign(outOf(raw));
    const at = `by strike ${struck}, ${args.join(' ')}`;
    if (found !== undefined) failures.push(`${at}: ${found}`);
    if (code !== 143 && code !== 0)
      failures.push(`${at}: exit code ${code}: ${JSON.stringify(raw.slice(-300))}`);
    rmSync(folder, { recursive: true });
  }
  rmSync(dirname(dirname(program)), { recursive: true });
  if (told === 0) failures.push('no hostile sign was shown in any way');
  const seen = `${bytes} bytes came out, ${told} hostile signs shown as pictures`;
  return { attack: 'raw bytes of the screens', tries: struck, failures, seen };
}
