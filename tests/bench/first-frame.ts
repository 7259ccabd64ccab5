// Time to the first frame in a real pseudo-terminal, as ratios within one interleaved run.
import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { spawn } from '@lydell/node-pty';
import { buildProgram } from '../../.scripts/build.mjs';

const runs = 11;
const bare = resolve('.build-bare');

const { CI: _ci, NO_COLOR: _no, FORCE_COLOR: _force, ...environment } = process.env;

/** Milliseconds from spawning until the output holds a text, or until the process ends. */
function timeTo(args: readonly string[], text: string | undefined): Promise<number> {
  return new Promise((done) => {
    const began = performance.now();
    const pty = spawn(process.execPath, [...args], {
      cols: 80,
      rows: 24,
      cwd: mkdtempSync(join(tmpdir(), 'droplight-bench-')),
      env: { ...(environment as Record<string, string>), TERM: 'xterm-256color' },
    });
    let seen = '';
    let took: number | undefined;
    pty.onData((data) => {
      seen += data;
      if (took !== undefined || text === undefined || !seen.includes(text)) return;
      took = performance.now() - began;
      pty.kill('SIGKILL');
    });
    pty.onExit(() => done(took ?? performance.now() - began));
  });
}

const median = (times: readonly number[]): number =>
  times.toSorted((a, b) => a - b)[Math.floor(times.length / 2)] ?? 0;

await buildProgram();
await buildProgram({ outdir: bare, entry: 'tests/bench/bare-ink.tsx', name: 'bare' });

const contestants = [
  ['node -e 0', ['-e', '0'], undefined],
  ['bare Ink, bundled', [join(bare, 'bare.js')], 'ready'],
  ['droplight, first frame', [resolve('.build/droplight.js')], 'Start a new job'],
  ['droplight --version', [resolve('.build/droplight.js'), '--version'], undefined],
] as const;

const times = contestants.map((): number[] => []);
for (let run = 0; run <= runs; run += 1)
  for (const [index, [, args, text]] of contestants.entries()) {
    const took = await timeTo(args, text);
    if (run > 0) times[index]?.push(took);
  }

const medians = times.map(median);
const [node = 1, ink = 1, ours = 1] = medians;
for (const [index, [name]] of contestants.entries())
  console.log(`${name.padEnd(24)} median ${(medians[index] ?? 0).toFixed(0).padStart(5)} ms`);
console.log(`first frame / node -e 0   ${(ours / node).toFixed(2)}  (target at most 4)`);
console.log(`first frame / bare Ink    ${(ours / ink).toFixed(2)}  (target at most 1.3)`);
