// The price of choices, on simulated sessions: an advised policy gives away little, one by odds most.
import { regretOf } from '../../src/core/reason/history/regret.ts';
import { inputOf, type JobState } from '../../src/core/reason/belief/evidence.ts';
import type { Model } from '../../src/core/reason/belief/model.ts';
import type { Move } from '../../src/core/reason/advice/minutes.ts';
import { environmentOf } from '../../src/core/reason/plan/episode.ts';
import { makeRandom } from '../../src/core/reason/plan/random.ts';
import { runEpisode } from '../../src/core/reason/plan/simulate.ts';
import { hideVehicle } from '../../src/core/reason/plan/vehicle.ts';
import { advisedPolicy, oddsOnly, type Policy } from '../../src/core/reason/plan/policies.ts';
import { fillTree } from '../../src/core/feed/fill.ts';
import { shippedShop, shippedTree } from '../helpers/library.ts';

const say = (line: string): void => void process.stdout.write(`${line}\n`);
const count = Number(process.argv[2] ?? 200);
const tree = fillTree(shippedTree('no-supply'), {});
const environment = environmentOf(tree, shippedShop().accesses);
const { model } = environment.input;

/** Adds up what a policy gives away, as the review would; many sessions begin alike. */
function priced(policy: Policy, known: Map<string, number>, lost: { minutes: number }): Policy {
  return (of, state) => {
    const move = policy(of, state);
    const key = JSON.stringify([state.findings, state.repairs, move]);
    const price = known.get(key) ?? priceOf(of, state, move);
    known.set(key, price);
    lost.minutes += price;
    return move;
  };
}

function priceOf(of: Model, state: JobState, { do: kind, index }: Move): number {
  const input = inputOf(of, state);
  if (input.kind === 'bad') throw new Error(JSON.stringify(input.problems));
  const id = (kind === 'check' ? of.checks : of.causes)[index]?.id ?? '';
  const judged = regretOf(input.value, { do: kind, id });
  return judged.kind === 'good' ? judged.value.minutes : 0;
}

for (const [name, policy, target] of [
  ['advised', advisedPolicy(), 'under 5 %'],
  ['odds only', oddsOnly, 'most of it'],
] as const) {
  const random = makeRandom(20_260_411);
  const lost = { minutes: 0 };
  const pricing = priced(policy, new Map(), lost);
  let used = 0;
  for (let run = 0; run < count; run += 1) {
    const vehicle = hideVehicle(model, random);
    used += runEpisode(environment, vehicle, pricing).minutes;
  }
  say(
    `${name.padEnd(10)} ${count} sessions: ${(used / count).toFixed(0)} minutes used, ${(lost.minutes / count).toFixed(1)} input away, ${((100 * lost.minutes) / used).toFixed(1)} % (target: ${target})`,
  );
}
