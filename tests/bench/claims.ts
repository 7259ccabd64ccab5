// What the advice claims against what the walk takes: minutes left at the start and after two
// findings, and what the first step saves against the tree's own, on hidden vehicles.
import { fillTree } from '../../src/core/feed/fill.ts';
import { refinedAdvice } from '../../src/core/reason/advice/advise.ts';
import type { Advice } from '../../src/core/reason/advice/advice.ts';
import { moveNamed, type Move } from '../../src/core/reason/advice/minutes.ts';
import {
  beginEpisode,
  doneIn,
  environmentOf,
  findIn,
  forcedCheck,
  isProof,
  workOn,
} from '../../src/core/reason/plan/episode.ts';
import type { Environment, Episode } from '../../src/core/reason/plan/episode.ts';
import { advisedPolicy, inputAt } from '../../src/core/reason/plan/policies.ts';
import { makeRandom } from '../../src/core/reason/plan/random.ts';
import { hideVehicle, type HiddenVehicle } from '../../src/core/reason/plan/vehicle.ts';
import { nextOnWay } from '../../src/core/tree/way/way.ts';
import { shippedShop, shippedTrees } from '../helpers/library.ts';

const count = Number(process.argv[2] ?? 200);
const { accesses } = shippedShop();
const advised = advisedPolicy();

/** Lives on from an episode by the advice; `first` is done before. */
function livedOn(
  environment: Environment,
  vehicle: HiddenVehicle,
  from: Episode,
  {
    first,
    until = () => false,
  }: { first?: Move | undefined; until?: (episode: Episode) => boolean } = {},
): Episode & { proved: boolean } {
  const { model } = environment.input;
  const mended = from.state.repairs.map(({ cause }) =>
    model.causes.findIndex(({ id }) => id === cause),
  );
  let episode = from;
  let next = first;
  while (!until(episode)) {
    const forced = forcedCheck(environment, episode);
    const move =
      next ??
      (forced === undefined
        ? advised(model, episode.state)
        : { do: 'check' as const, index: forced });
    next = undefined;
    episode = workOn(episode, move, environment);
    if (move.do === 'repair') {
      mended.push(move.index);
      continue;
    }
    const shown = { check: move.index, result: vehicle.show(move.index, mended) };
    episode = findIn(episode, shown, environment);
    if (isProof(model, shown)) return { ...episode, proved: true };
  }
  return { ...episode, proved: false };
}

/** The settled advice at a place, kept: many vehicles come by it. */
function settledAt(environment: Environment) {
  const kept = new Map<string, Advice>();
  return ({ state }: Episode): Advice => {
    const key = JSON.stringify([state.findings, state.repairs]);
    const known = kept.get(key);
    if (known !== undefined) return known;
    const way = nextOnWay(environment.tree, doneIn(state));
    const own =
      way.kind === 'check'
        ? { do: 'check' as const, id: way.check }
        : way.kind === 'cause'
          ? { do: 'repair' as const, id: way.cause }
          : undefined;
    const made = refinedAdvice(inputAt(environment.input.model, state), { own });
    if (made.kind === 'bad') throw new Error(JSON.stringify(made.problems));
    kept.set(key, made.value);
    return made.value;
  };
}

const mean = (list: readonly number[]): number =>
  list.reduce((sum, one) => sum + one, 0) / list.length;
const error = (list: readonly number[]): number =>
  Math.sqrt(
    list.reduce((sum, one) => sum + (one - mean(list)) ** 2, 0) / (list.length - 1) / list.length,
  );
const show = (claimed: readonly number[], walked: readonly number[]): string =>
  claimed.length < 2
    ? '-'.padEnd(28)
    : `${mean(claimed).toFixed(0)} / ${mean(walked).toFixed(0)} ±${error(walked).toFixed(0)}  ${(mean(claimed) / mean(walked)).toFixed(2)}`.padEnd(
        28,
      );

console.log(`${count} hidden vehicles a tree; claimed / walked (standard error), their ratio`);
console.log(
  [
    'tree'.padEnd(14),
    'left at the start'.padEnd(28),
    'left after two findings'.padEnd(28),
    'saves at the start',
  ].join(''),
);
for (const tree of shippedTrees()) {
  const environment = environmentOf(fillTree(tree, {}), accesses);
  const { input } = environment;
  const settled = settledAt(environment);
  const random = makeRandom(20_260_411);
  const start = { claimed: [] as number[], walked: [] as number[] };
  const later = { claimed: [] as number[], walked: [] as number[] };
  const saves = { claimed: [] as number[], walked: [] as number[] };
  for (let each = 0; each < count; each += 1) {
    const vehicle = hideVehicle(input.model, random);
    const confirmed = livedOn(environment, vehicle, beginEpisode(environment), {
      until: ({ state }) => state.findings.length === 1,
    });
    const advice = settled(confirmed);
    const [best] = advice.next;
    const end = livedOn(environment, vehicle, confirmed, {
      ...(best && { first: moveNamed(input.model, best) }),
    });
    start.claimed.push(best?.expectedLeft ?? NaN);
    start.walked.push(end.minutes - confirmed.minutes);
    const way = nextOnWay(environment.tree, doneIn(confirmed.state));
    if (way.kind === 'check' && best?.versusTree !== undefined && best.versusTree >= 3) {
      const own = livedOn(environment, vehicle, confirmed, {
        first: moveNamed(input.model, { do: 'check', id: way.check }),
      });
      saves.claimed.push(best.versusTree);
      saves.walked.push(own.minutes - end.minutes);
    }
    const two = livedOn(environment, vehicle, confirmed, {
      until: ({ state }) => state.findings.length === 3 || state.repairs.length > 0,
    });
    if (two.state.repairs.length > 0 || two.proved) continue;
    const left = settled(two).next[0]?.expectedLeft;
    if (left === undefined) continue;
    later.claimed.push(left);
    later.walked.push(livedOn(environment, vehicle, two).minutes - two.minutes);
  }
  console.log(
    [
      tree.id.padEnd(14),
      show(start.claimed, start.walked),
      show(later.claimed, later.walked),
      show(saves.claimed, saves.walked),
    ].join(''),
  );
}
console.log('targets: minutes left within 10 %; saves within 3 minutes or 20 %');
