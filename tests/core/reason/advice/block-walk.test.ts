import { describe, expect, test } from 'vitest';
import { chancesIn } from '../../../../src/core/reason/advice/explain.ts';
import { LookAhead } from '../../../../src/core/reason/advice/look-ahead.ts';
import { freshInput } from '../../../../src/core/reason/belief/evidence.ts';
import { makeModel } from '../../../../src/core/reason/belief/model.ts';
import { trusted } from '../../../../src/core/problem.ts';
import { parseTreeValue } from '../../../../src/core/tree/parse.ts';
import { optimalMinutes, wholeTables } from '../../../helpers/optimum.ts';
import { policyMinutes, type Policy } from '../../../helpers/policy.ts';
import { rowOf } from '../../../helpers/row.ts';
import { smallShop } from '../../../helpers/tree.ts';

const inputOfRow = (many: number) =>
  freshInput(makeModel(trusted(parseTreeValue(rowOf(many).tree, 'row.json', smallShop))));

/** What the probe of a whole row is said to cost, and what it costs where mending follows it at once. */
function priced(many: number) {
  const input = inputOfRow(many);
  const { tables, at } = wholeTables(input);
  const ahead = new LookAhead(tables);
  const pull = input.model.checks.findIndex(({ id }) => id === 'pull');
  return { input, pull, said: ahead.scoreCheck(at, pull).cost, once: ahead.cheapest(at)?.cost };
}

/** Parts half of what is open until one is all but sure, and mends what is likeliest then. */
const halves =
  (pull: number): Policy =>
  ({ findings, repairs }, at, tables) => {
    const { checks } = tables.input.model;
    const last = findings.at(-1);
    const next = last === undefined ? pull : checks[last.check]?.goesOn[last.result];
    const sure = Math.max(...chancesIn(tables, at.weights, at)) > 0.9;
    return repairs.length === 0 && next !== undefined && !sure
      ? { do: 'check', index: next }
      : { do: 'repair', index: new LookAhead(tables).mendOnly(at).first };
  };

test.each([3, 4])('the probe of a row of %i costs what halving to the end costs', (many) => {
  const { input, pull, said } = priced(many);

  expect(said).toBeCloseTo(policyMinutes(input, halves(pull)), 6);
});

describe.each([3, 4, 5])('the probe of a row of %i', (many) => {
  test('costs no less than the best plan there is', () => {
    const { input, said } = priced(many);

    expect(said).toBeGreaterThanOrEqual((optimalMinutes(input) ?? Infinity) - 1e-9);
  });

  test('looks cheaper than where mending follows it at once', () => {
    const { said, once } = priced(many);

    expect(said).toBeLessThan(0.9 * (once ?? 0));
  });
});
