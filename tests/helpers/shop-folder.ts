import { copyFileSync, mkdirSync, readdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { makeRandom } from '../../src/core/reason/plan/random.ts';
import { shippedShop, shippedTrees } from './library.ts';
import { scratch } from './commands.ts';
import { benchesOf, recordText, shopJob } from './shop-jobs.ts';

/** A folder with the example sessions in it, as a place of work has them. */
export function exampleShop(): string {
  const folder = scratch();
  const sessions = join(folder, 'sessions');
  mkdirSync(sessions);
  for (const name of readdirSync('sessions/examples').filter((one) => one.endsWith('.jsonl')))
    copyFileSync(join('sessions/examples', name), join(sessions, name));
  return folder;
}

/** Fills a folder with generated jobs of a shop, so many of them, from a seed. */
export function generateShop(
  sessions: string,
  count: number,
  { seed = 20_260_411, trees }: { readonly seed?: number; readonly trees?: readonly string[] } = {},
): void {
  mkdirSync(sessions, { recursive: true });
  const random = makeRandom(seed);
  const wanted = shippedTrees().filter(({ id }) => trees?.includes(id) ?? true);
  const benches = benchesOf(wanted, shippedShop());
  for (let made = 0; made < count; made += 1) {
    const bench = benches[Math.floor(random() * benches.length)];
    if (bench === undefined) throw new Error('there are no trees');
    const job = shopJob(bench, made / 3, random);
    const id = `${job.header.id}-${made}`;
    writeFileSync(join(sessions, `${id}.jsonl`), recordText(job, id));
  }
}
