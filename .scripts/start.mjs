// npm start: sets up on the first run, builds when the source is newer, then runs the program.
import { join } from 'node:path';
import { spawnSync } from 'node:child_process';
import { buildIfStale, fitNode, install, root } from './setup.mjs';

install();
const built = buildIfStale();
if (built !== 0) process.exit(built);
const done = spawnSync(fitNode(), [join(root, '.build', 'bin.cjs'), ...process.argv.slice(2)], {
  stdio: 'inherit',
  cwd: process.env.INIT_CWD ?? root,
});
process.exit(done.status ?? 3);
