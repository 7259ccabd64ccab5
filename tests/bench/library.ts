// A library of 1,000 trees, copies of the shipped ones: read, parsed, checked for names and feed.
import {
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { spawnSync } from 'node:child_process';
import { buildProgram } from '../../.scripts/build.mjs';
import { loadLibrary } from '../../src/store/library.ts';
import { isTreeFile } from '../../src/store/headings.ts';
import { nodeFiles } from '../../src/store/node-files.ts';

const many = 1000;
const folder = mkdtempSync(join(tmpdir(), 'droplight-'));
const names = readdirSync('trees').filter(isTreeFile);
const texts = names.map((name) => readFileSync(join('trees', name), 'utf8'));
for (let at = 0; at < many; at += 1) {
  const id = `${names[at % names.length]?.replace('.json', '')}-${at}`;
  const text = texts[at % texts.length] ?? '';
  writeFileSync(join(folder, `${id}.json`), text.replace(/"id": "[^"]+"/, `"id": "${id}"`));
}

/** What reading and parsing the same texts takes alone: the floor under any loading. */
function floorMilliseconds(): number {
  const before = performance.now();
  const parsed = readdirSync(folder).map((name) =>
    JSON.parse(readFileSync(join(folder, name), 'utf8')),
  );
  return parsed.length === many ? performance.now() - before : Number.NaN;
}

for (const run of [1, 2, 3]) {
  const floor = floorMilliseconds();
  const before = performance.now();
  const { trees, problems } = loadLibrary(nodeFiles, { folder, shipped: 'trees' });
  const time = performance.now() - before;
  console.log(
    `run ${run}: ${trees.length} trees, ${problems.length} problems, ${time.toFixed(0)} ms, ${(time / floor).toFixed(1)} x JSON.parse alone  (target: under 1000)`,
  );
}

const program = mkdtempSync(join(tmpdir(), 'droplight-built-'));
await buildProgram({ outdir: program });
symlinkSync(resolve('node_modules'), join(program, 'node_modules'));
writeFileSync(join(program, 'package.json'), '{"type":"module"}');

/** Whole processes, the least of five: what else the machine does only ever adds. */
const least = (args: readonly string[]): number =>
  Math.min(
    ...[1, 2, 3, 4, 5].map(() => {
      const before = performance.now();
      spawnSync(process.execPath, [...args]);
      return performance.now() - before;
    }),
  );
const list = [join(program, 'droplight.js'), 'trees', 'list', '--trees'];
const [bare, shipped, all] = [
  least(['-e', '0']),
  least([...list, 'trees']),
  least([...list, folder]),
];
console.log(
  `list, whole process: ${shipped.toFixed(0)} ms for the shipped trees, ${all.toFixed(0)} ms for ${many}; node -e 0 ${bare.toFixed(0)} ms  (target: under 300)`,
);
for (const made of [folder, program]) rmSync(made, { recursive: true });
