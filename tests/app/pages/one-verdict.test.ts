import { expect, test } from 'vitest';
import { figurePage, knownInputs, workOut } from '../../../src/app/pages/figure-page.ts';
import { bandOf } from '../../../src/core/tree/judge.ts';
import { standardReading } from '../../../src/core/trade/standard.ts';
import { convert } from '../../../src/core/trade/units/units.ts';
import type { Action } from '../../../src/core/session/action.ts';
import { decide } from '../../../src/core/session/rules/rules.ts';
import type { Check, Tree } from '../../../src/core/tree/model.ts';
import { after, headerFor } from '../../helpers/story.ts';
import { shippedShop, shippedTree, shippedTrees } from '../../helpers/library.ts';

/**
 * The checks that judge by a figure, with the input that takes the reading and what tells that it is
 * not too low: a vacuum that is rather high is no fault by the checks.
 */
const judged = [
  { figure: 'vacuum-at-altitude', input: 'reading', good: /^(?!Low)/, high: 19 },
  { figure: 'load-test', input: 'volts', good: /^Holds up/, high: 12 },
] as const;

const checksBy = (figure: string): readonly Check[] =>
  shippedTrees()
    .flatMap(({ checks }) => Object.values(checks))
    .filter(({ reading }) => reading?.standard === figure);

const days = [0, 2300, 5200, 9000].flatMap((feet) =>
  [5, 20, 60, 95].map((fahrenheit) => ({ feet, fahrenheit })),
);

type Day = (typeof days)[number];

/** What the figure says of a reading, opened in a job of that day. */
function verdict(
  { figure, input }: (typeof judged)[number],
  { feet, fahrenheit }: (typeof days)[number],
  reading: number,
): string {
  const known = knownInputs(figure, {
    conditions: {
      altitude: { value: feet, unit: 'ft' },
      temperature: { value: fahrenheit, unit: 'F' },
    },
    facts: { volts: '12-volt' },
  });
  const run = workOut(figurePage(figure, 'us', { ...known, [input]: String(reading) }));
  if (run.kind === 'bad') throw new Error(JSON.stringify(run.problems));
  return run.value.verdict ?? '';
}

/** Whether the check calls the reading healthy on that day, its own error left aside. */
function isHealthy(
  check: Check,
  { feet, fahrenheit }: (typeof days)[number],
  reading: number,
): boolean {
  const under = { altitude: convert(feet, 'ft', 'm'), temperature: convert(fahrenheit, 'F', 'C') };
  const unit = check.reading?.unit ?? '';
  const told = standardReading(
    check.reading?.standard ?? '',
    { value: reading, unit },
    { ...under, volts: 12 },
  );
  return bandOf(check, told.kind === 'standard' ? told.value : reading) === 0;
}

test.each(judged)(
  'the figure $figure and the checks that rest on it call the same readings too low',
  (one) => {
    const checks = checksBy(one.figure);
    const seen = { healthy: 0, not: 0 };

    expect(checks.length).toBeGreaterThan(0);
    for (const check of checks)
      for (const day of days)
        for (let reading = 8; reading <= one.high; reading += 0.35) {
          const healthy = isHealthy(check, day, reading);
          seen[healthy ? 'healthy' : 'not'] += 1;
          const said = `${reading} at ${day.feet} ft, ${day.fahrenheit} F`;
          expect([said, one.good.test(verdict(one, day, reading))]).toEqual([said, healthy]);
        }
    expect(Math.min(seen.healthy, seen.not)).toBeGreaterThan(20);
  },
);

const judgedFigures: readonly string[] = judged.map(({ figure }) => figure);
const recorded = shippedTrees().flatMap((tree) =>
  Object.entries(tree.checks).flatMap(([id, { reading }]) =>
    reading?.standard !== undefined && judgedFigures.includes(reading.standard)
      ? [[tree.id, id] as const]
      : [],
  ),
);

const shop = shippedShop();

/** What a check waits for, shown so that it can be judged. */
const shownGood = (check: Check | undefined): readonly Action[] =>
  Object.entries(check?.after ?? {}).map(([before, [result]]) => ({
    do: 'find',
    check: before,
    result,
    acknowledged: true,
    despite: 'a test',
  }));

/** Whether the record calls a reading healthy, in a job of that day: both, where it may be either. */
function inRecord(
  tree: Tree,
  id: string,
  { feet, fahrenheit }: Day,
  reading: number,
): readonly boolean[] {
  const check = tree.checks[id];
  const header = headerFor(tree, shop, { volts: '12-volt' });
  const { story } = after(shownGood(check), {
    ...header,
    conditions: {
      altitude: { value: feet, unit: 'ft', typed: `${feet} ft` },
      temperature: { value: fahrenheit, unit: 'F', typed: `${fahrenheit} F` },
    },
  });
  const decision = decide(
    story,
    {
      do: 'find',
      check: id,
      reading: `${reading} ${check?.reading?.unit ?? ''}`,
      insist: true,
      acknowledged: true,
      despite: 'a test',
    },
    { tree: () => undefined },
  );
  if (decision.kind === 'refused') throw new Error(decision.problem.message);
  const found = decision.payloads.find((payload) => payload.kind === 'found');
  // A reading within the meter's error of a limit is kept with both results.
  return [found?.result, found?.orResult].flatMap((result) =>
    result === undefined ? [] : [check?.results[0]?.id === result],
  );
}

test.each(recorded)('%s, %s: the record says what the figure says', (treeId, id) => {
  const tree = shippedTree(treeId);
  const one = judged.find(({ figure }) => figure === tree.checks[id]?.reading?.standard);
  if (one === undefined) throw new Error('no such check');
  const seen = { healthy: 0, not: 0 };

  for (const day of days)
    for (let reading = 8; reading <= one.high; reading += 1.3) {
      const healthy = inRecord(tree, id, day, reading);
      if (healthy.length === 1) seen[healthy[0] === true ? 'healthy' : 'not'] += 1;
      const said = `${reading} at ${day.feet} ft, ${day.fahrenheit} F`;
      expect([said, healthy]).toEqual([
        said,
        expect.arrayContaining([one.good.test(verdict(one, day, reading))]),
      ]);
    }
  expect(Math.min(seen.healthy, seen.not)).toBeGreaterThan(5);
});
