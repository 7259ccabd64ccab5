// What a hand feels, as ratios within one run: starts, keys and memory beside the least that Node and Ink can do.
import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { buildProgram } from '../../.scripts/build.mjs';
import { atHand } from './lib-keys.ts';
import { timeStarts } from './lib-starts.ts';
import { quantile } from './lib-terminal.ts';

const rounds = Number(process.env['BENCH_ROUNDS'] ?? 15);
const bares = mkdtempSync(join(tmpdir(), 'droplight-bare-'));
const folder = mkdtempSync(join(tmpdir(), 'droplight-bench-'));

await buildProgram();
const bare = async (entry: string, name: string, isLean: boolean): Promise<string> => {
  const outdir = join(bares, name);
  await buildProgram({ outdir, entry: `tests/bench/${entry}.tsx`, name, isLean });
  return join(outdir, `${name}.js`);
};
const bareFrame = await bare('bare-ink', 'bare', false);
const leanFrame = await bare('bare-ink', 'lean', true);
const bareList = await bare('bare-list', 'list', false);
const droplight = resolve('.build/bin.cjs');

const starts = [
  { name: 'node -e 0', args: ['-e', '0'] },
  { name: 'bare Ink, first frame', args: [bareFrame], shows: 'ready' },
  { name: 'bare Ink made lean as ours', args: [leanFrame], shows: 'ready' },
  { name: 'droplight, first frame', args: [droplight], shows: 'Start a new job' },
  { name: 'droplight --version', args: [droplight, '--version'] },
  { name: 'droplight trees list', args: [droplight, 'trees', 'list'] },
];

const letters = (text: string): readonly string[] => text.split('');

/** Every key of a walk: the questions, cautions, answers, notes, other pages, a repair, its proof, the end. */
const walk: readonly string[] = [
  ['\r', ...letters('Orchard van'), '\r', ...letters('JB'), '\r', '\r', '\r'],
  [...letters('33433334'), '\r', 'Z', '1', 'y', '2', 'b', '3', 'w', '\u001b', 'o', '\u001b[B'],
  ['\u001b[B', '\u001b', 'h', '\u001b[B', '\u001b', 'n', ...letters('smells of fuel'), '\r'],
  ['?', '\u001b', 'g', '\u001b', 'i', 'u', 'b', '\u001b[B', '\u001b[A', 'r', '1', '1', 'y'],
  [...letters('wire off'), '\r', 'Z', '1', 'y', ...letters('new end'), '\r', '\r', '\r', '\r', '1'],
].flat();

// Node keeps what it compiled when a program ends by itself: the next start is the usual one.
const warm = await atHand(folder, [droplight]);
await warm.press('q');
const times = await timeStarts(starts, { rounds, folder });

const ours = await atHand(folder, [droplight, 'start', 'rough-idle']);
const list = await atHand(folder, [bareList]);
const keys: { readonly key: string; readonly took: number | undefined }[] = [];
const arrows: number[] = [];
for (const key of walk) {
  keys.push({ key, took: await ours.press(key) });
  const took = await list.press('\u001b[B');
  if (took !== undefined) arrows.push(took);
}
const [held, least] = [ours.megabytes(), list.megabytes()];
if (!ours.screenSaid('speed wanders')) console.log('The walk did not reach its checks.');
ours.leave();
list.leave();

const leastOf = (index: number) => Math.min(...(times[index] ?? []));
for (const [index, { name }] of starts.entries())
  console.log(
    `${name.padEnd(28)} least ${leastOf(index).toFixed(0).padStart(4)} ms, median ${quantile(
      times[index] ?? [],
      0.5,
    )
      .toFixed(0)
      .padStart(4)} ms`,
  );

/** A ratio of two starts, by the median of the rounds, each of which had both. */
function ratioOf(one: number, other: number): number {
  const pairs = (times[one] ?? []).map((took, round) => took / (times[other]?.[round] ?? 1));
  return quantile(pairs, 0.5);
}

const escape = '\u001b';
const answered = keys.flatMap(({ key, took }) => (took === undefined ? [] : [{ key, took }]));
const plain = answered.filter(({ key }) => key !== escape).map(({ took }) => took);
const escapes = answered.filter(({ key }) => key === escape).map(({ took }) => took);
const tell = (what: string, value: number, target: string) =>
  console.log(`${what.padEnd(44)} ${value.toFixed(2).padStart(6)}  (target ${target})`);

console.log(
  `keys answered: ${answered.length} of ${keys.length}; arrows of the bare list: ${arrows.length}`,
);
for (const part of [0.5, 0.99])
  console.log(
    `key to frame, p${part * 100}: ${quantile(plain, part).toFixed(1)} ms, bare list ${quantile(arrows, part).toFixed(1)} ms`,
  );
const slowest = answered
  .filter(({ key }) => key !== escape)
  .toSorted((one, other) => other.took - one.took)
  .slice(0, 6);
console.log(
  `slowest: ${slowest.map(({ key, took }) => `${JSON.stringify(key)} ${took.toFixed(0)}`).join(', ')}`,
);
console.log(`memory: ${held.toFixed(0)} MB, bare list ${least.toFixed(0)} MB`);
console.log('');
tell('first frame / bare Ink', ratioOf(3, 1), 'at most 1.15');
tell('first frame / bare Ink made lean as ours', ratioOf(3, 2), 'at most 1.15');
tell('--version / node -e 0', ratioOf(4, 0), 'at most 1.4');
tell('trees list / node -e 0', ratioOf(5, 0), 'at most 2');
tell('key to frame / bare list, p50', quantile(plain, 0.5) / quantile(arrows, 0.5), 'at most 1.5');
tell(
  'key to frame / bare list, p99',
  quantile(plain, 0.99) / quantile(arrows, 0.99),
  'at most 1.5',
);
tell('Escape to frame, p99, in ms', quantile(escapes, 0.99), 'at most 30');
tell('memory after a walk / bare list', held / least, 'at most 1.5');
