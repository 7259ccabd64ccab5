// A library of 1,000 trees, copies of the shipped ones: read, parsed, checked for names and feed.
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { spawnSync } from 'node:child_process';
import { isTreeFile, loadLibrary } from '../../src/store/library.ts';
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

for (const run of [1, 2, 3]) {
  const before = performance.now();
  const { trees, problems } = loadLibrary(nodeFiles, folder, 'trees');
  const time = performance.now() - before;
  console.log(
    `run ${run}: ${trees.length} trees, ${problems.length} problems, ${time.toFixed(0)} ms  (target: under 1000)`,
  );
}

const listed = (trees: string): number => {
  const before = performance.now();
  spawnSync(process.execPath, ['src/main.ts', 'trees', 'list', '--trees', trees]);
  return performance.now() - before;
};
const [shipped, all] = [listed('trees'), listed(folder)];
console.log(
  `list, whole process: ${shipped.toFixed(0)} ms for the shipped trees, ${all.toFixed(0)} ms for ${many}  (target: under 300)`,
);
rmSync(folder, { recursive: true });
