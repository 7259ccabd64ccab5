// npm run bench [NAME...]: prints timings and tables beside their targets. Nothing here fails a build.
import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { root, run } from './setup.mjs';

const folder = join(root, 'tests', 'bench');
const wanted = process.argv.slice(2);
const benches = readdirSync(folder)
  .filter((name) => name.endsWith('.ts') && !name.endsWith('.d.ts'))
  .filter((name) => wanted.length === 0 || wanted.some((word) => name.startsWith(word)))
  .filter((name) => !name.startsWith('lib-'));
let worst = 0;
for (const name of benches) {
  process.stdout.write(`\n== ${name.replace('.ts', '')}\n`);
  worst = Math.max(worst, run([join(folder, name)]));
}
process.exit(worst);
