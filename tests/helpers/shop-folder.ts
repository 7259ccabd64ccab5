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

/** What becomes of some files in the years: a write cut off, a byte changed by hand, a name taken by a letter. */
const mishaps: Readonly<Record<number, (text: string) => string>> = {
  7: (text) => text.slice(0, -20),
  17: (text) => text.replace(/"kind":"found"(?!.*"kind":"found")/s, '"kind":"fOund"'),
  27: () => 'Dear shop, the van runs again.\n',
};

/** Fills a folder with generated jobs of a shop, so many of them, from a seed; three of forty come to harm. */
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
    const harmed = mishaps[made % 40] ?? ((text: string) => text);
    writeFileSync(join(sessions, `${id}.jsonl`), harmed(recordText(job, id)));
  }
}
