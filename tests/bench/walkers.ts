// node tests/bench/walkers.ts [WALKS] [WALKER...]: what the review charges those who follow the screen or the
// advice (it must be nothing), and those who mend by odds or do anything at all.
import { makeRandom } from '../../src/core/reason/plan/random.ts';
import { givenAway } from '../../src/core/review/decision.ts';
import { decisionsOf } from '../../src/core/review/decisions.ts';
import { fold } from '../../src/core/session/fold.ts';
import { shippedShop, shippedTrees } from '../helpers/library.ts';
import { walkers, walkOn } from '../helpers/walkers.ts';

const [walks = 5, ...named] = process.argv
  .slice(2)
  .map((word) => (/^\d+$/.test(word) ? Number(word) : word));
const shop = shippedShop();
const seed = 20_260_411;
const sum = (values: readonly number[]): number => values.reduce((all, one) => all + one, 0);
const bad: string[] = [];

for (const walker of walkers.filter((one) => named.length === 0 || named.includes(one))) {
  const rows = shippedTrees().map((tree) => {
    const random = makeRandom(seed);
    const most = walker === 'random' ? 6 : 40;
    const jobs = Array.from({ length: Number(walks) }, () => {
      const recorded = walkOn({ tree, shop }, { walker, random, most });
      const decisions = decisionsOf(recorded);
      const { minutes, due } = fold(recorded.header, recorded.events);
      for (const { n, charged, planned = 0, taken } of decisions)
        if (charged > Math.min(planned, taken)) bad.push(`${tree.id} ${walker}: event ${n}`);
      if (givenAway(decisions) > minutes) bad.push(`${tree.id} ${walker}: more than the clock`);
      return { decisions, proven: due.kind === 'proven' };
    });
    const steps = jobs.flatMap(({ decisions }) => decisions);
    const repairs = steps.filter(({ step }) => step.do === 'repair');
    return {
      tree: tree.id,
      proven: jobs.filter(({ proven }) => proven).length,
      steps: steps.length,
      charged: sum(jobs.map(({ decisions }) => givenAway(decisions))),
      repairs: repairs.length,
      repairsCharged: repairs.filter(({ charged }) => charged > 0).length,
    };
  });
  const all = (key: 'proven' | 'steps' | 'charged' | 'repairs' | 'repairsCharged'): number =>
    sum(rows.map((row) => row[key]));
  for (const row of rows)
    process.stdout.write(
      `${walker.padEnd(8)}${row.tree.padEnd(15)}${walks} walks, ${row.proven} proven, ${row.steps} steps, ${row.charged} minutes charged, ${row.repairsCharged} of ${row.repairs} repairs\n`,
    );
  process.stdout.write(
    `${walker.padEnd(8)}all            ${all('steps')} steps, ${all('charged')} minutes charged, ${all('repairsCharged')} of ${all('repairs')} repairs charged\n`,
  );
}
process.stdout.write(
  `charged beyond the step or the clock: ${bad.length} ${bad.slice(0, 5).join('; ')}\n`,
);
