import { expect, test } from 'vitest';
import { figurePage, knownInputs, workOut } from '../../../src/app/pages/figure-page.ts';
import { bandOf } from '../../../src/core/tree/judge.ts';
import { standardReading } from '../../../src/core/trade/standard.ts';
import { convert } from '../../../src/core/trade/units/units.ts';
import type { Check } from '../../../src/core/tree/model.ts';
import { shippedTrees } from '../../helpers/library.ts';

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
