// npm run torture [WORD...] [SCALE]: every attack on the record at length; prints a table with counts and seeds.
import { join } from 'node:path';
import { root, run } from './setup.mjs';

process.exit(
  run(['--expose-gc', join(root, 'tests', 'torture', 'all.ts'), ...process.argv.slice(2)]),
);
