import { describe, expect, test } from 'vitest';
import { at } from '../../../../src/core/at.ts';
import { quickAdvice } from '../../../../src/core/reason/advice/advise.ts';
import { believe } from '../../../../src/core/reason/belief/posterior.ts';
import { inputFrom } from '../../../../src/core/reason/history/from-story.ts';
import { beliefHistory } from '../../../../src/core/reason/history/belief-history.ts';
import { makeRandom } from '../../../../src/core/reason/plan/random.ts';
import type { Action } from '../../../../src/core/session/action.ts';
import { contradictions, settlings } from '../../../../src/core/session/contradiction.ts';
import type { Settling } from '../../../../src/core/session/kinds/shapes.ts';
import { fold } from '../../../../src/core/session/fold.ts';
import { newEvent } from '../../../../src/core/session/read-event.ts';
import { decide } from '../../../../src/core/session/rules/rules.ts';
import { currentLeg } from '../../../../src/core/session/story.ts';
import type { Tree } from '../../../../src/core/tree/model.ts';
import { shippedShop, shippedTree, shippedTrees } from '../../../helpers/library.ts';
import { after, headerFor, stampAt } from '../../../helpers/story.ts';

const found = (check: string, result: string): Action => ({ do: 'find', check, result });
const read = (check: string, reading: string): Action => ({ do: 'find', check, reading });
const repair = (cause: string): Action => ({ do: 'repair', cause });
const prove = (result: string): Action => ({ do: 'prove', result });

/*
 * Each of these is impossible in the model: a fault that is there shows the same each time, and a
 * repair makes nothing worse. Mechanics find it all the same.
 */
const sessions: readonly (readonly [string, string, readonly Action[]])[] = [
  [
    'a battery sagged over a limit in an afternoon',
    'no-supply',
    [
      read('bat-rest-volts', '12.65'),
      repair('relay-stud'),
      prove('dead'),
      read('bat-rest-volts', '12.1'),
    ],
  ],
  [
    'the complaint itself got worse over a repair',
    'rough-idle',
    [found('idle-check', 'hunts'), repair('idle-mix'), prove('shakes')],
  ],
  [
    'the complaint showed with everything dead after a repair',
    'no-supply',
    [found('lamps-horn', 'horn-only'), repair('relay-stud'), prove('dead')],
  ],
  [
    'a reading fell over its limit after a repair',
    'rough-idle',
    [
      found('idle-check', 'hunts'),
      found('choke-hot', 'open'),
      read('vac-level', '17.9'),
      repair('idle-mix'),
      prove('hunts'),
      read('vac-level', '15'),
    ],
  ],
];

test.each(sessions)('there is a belief and a next step where %s', (_, tree, actions) => {
  const header = headerFor(shippedTree(tree), shippedShop());
  const made = inputFrom(after(actions, header).story);
  if (made.kind === 'bad') throw new Error(JSON.stringify(made.problems));

  const belief = believe(made.value);
  const advice = quickAdvice(made.value);

  expect(made.value.setAside.length).toBeGreaterThan(0);
  expect(belief.kind === 'good' && Math.max(...belief.value.chances)).toBeGreaterThan(0.05);
  expect(advice.kind === 'good' && advice.value.next.length).toBeGreaterThan(0);
});

const chancesOf = (actions: readonly Action[], tree = 'no-supply') => {
  const made = inputFrom(after(actions, headerFor(shippedTree(tree), shippedShop())).story);
  const belief = made.kind === 'bad' ? made : believe(made.value);
  if (made.kind === 'bad' || belief.kind === 'bad') throw new Error(JSON.stringify(belief));
  const { chances } = belief.value;
  return Object.fromEntries(made.value.model.causes.map(({ id }, i) => [id, chances[i] ?? 0]));
};

describe('what the mechanic says of a battery that reads worse after a repair', () => {
  const full = read('bat-rest-volts', '12.65');
  const low = read('bat-rest-volts', '12.1');
  const between = [repair('relay-stud'), prove('dead')];
  const settled = (as: Settling, last: readonly Action[] = []) =>
    chancesOf([found('lamps-horn', 'dead'), full, ...between, low, { do: 'settle', as }, ...last]);
  const before = [found('lamps-horn', 'dead')];

  test('misread then: as if the first reading had never been taken', () => {
    expect(settled('misread-then')).toEqual(chancesOf([...before, ...between, low]));
  });

  test('misread now: as if the last one had never been taken', () => {
    expect(settled('misread-now')).toEqual(chancesOf([...before, full, ...between]));
  });

  test('new since: the first one is out, and what came with the repair is a suspect of 2 %', () => {
    const { 'brought-by-repair-1': brought = 0, ...rest } = settled('new-since');
    const without = chancesOf([...before, ...between, low]);

    expect(Object.keys(rest)).toEqual(Object.keys(without));
    expect(brought).toBeGreaterThan(0.02);
    // It explains what a flat battery had to explain alone.
    expect(rest['battery-flat']).toBeLessThan(without['battery-flat'] ?? 0);
  });

  test('comes and goes: both count, and so does each that follows', () => {
    expect(settled('comes-and-goes', [low])).not.toEqual(settled('comes-and-goes'));
    // What does not come and go shows the same each time, so doing it again tells nothing.
    expect(settled('misread-then', [low])).toEqual(settled('misread-then'));
  });

  test('taken back, the question is open again and the belief rests on the newest', () => {
    const actions = [...before, full, ...between, low];
    const { story } = after(actions, headerFor(shippedTree('no-supply'), shippedShop()));
    const said = after(
      [...actions, { do: 'settle', as: 'misread-then' }],
      headerFor(shippedTree('no-supply'), shippedShop()),
    );
    const n = said.events.at(-1)?.n ?? 0;

    expect(
      chancesOf([
        ...actions,
        { do: 'settle', as: 'misread-then' },
        { do: 'correct', n, withdraw: true },
      ]),
    ).toEqual(chancesOf(actions));
    expect(contradictions(story)).toHaveLength(1);
    expect(contradictions(said.story)).toEqual([]);
  });

  test.each(['new-since', 'comes-and-goes', 'misread-then', 'misread-now'] as const)(
    '%s: the belief along the session ends where the belief now stands',
    (as) => {
      const { story } = after(
        [found('lamps-horn', 'dead'), full, ...between, low, { do: 'settle', as }],
        headerFor(shippedTree('no-supply'), shippedShop()),
      );
      const last = beliefHistory(story).at(-1)?.after;
      const now = settled(as);

      const off = Object.entries(now).map(([id, chance]) =>
        Math.abs((last?.get(id) ?? 9) - chance),
      );
      expect(Math.max(...off)).toBeLessThan(1e-12);
    },
  );
});

/** Sessions of stray results, repairs and proofs, in which every contradiction is settled at random. */
function randomSession(tree: Tree, seed: number) {
  const random = makeRandom(seed);
  const pick = <T>(list: readonly T[]): T => at(list, Math.floor(random() * list.length));
  const header = headerFor(tree, shippedShop());
  let { story, events } = after([], header);
  const take = (action: Action): void => {
    const ruling = decide(story, action, { tree: () => undefined });
    if (ruling.kind === 'refused') return;
    const added = ruling.payloads.map((payload, i) =>
      newEvent(events.length + 1 + i, stampAt(events.length + 1 + i), payload),
    );
    events = [...events, ...added];
    story = fold(header, events);
  };
  // A few checks only, so that they meet one another again.
  const checks = Object.entries(currentLeg(story).tree.checks).slice(0, 6);
  for (let step = 0; step < 14; step += 1) {
    const [check, { results }] = pick(checks);
    if (random() < 0.2)
      take({ do: 'repair', cause: pick(Object.keys(currentLeg(story).tree.causes)) });
    else take({ do: 'find', check, result: pick(results).id });
    const open = contradictions(story).at(-1);
    if (open !== undefined && random() < 0.8) take({ do: 'settle', as: pick(settlings(open)) });
  }
  return story;
}

test('random sessions with stray results and random answers have a belief and a next step', () => {
  const said = new Set<string>();
  for (const tree of shippedTrees())
    for (let seed = 1; seed <= 5; seed += 1) {
      const story = randomSession(tree, seed);
      for (const { as } of story.settled) said.add(as);
      const made = inputFrom(story);
      if (made.kind === 'bad') throw new Error(JSON.stringify(made.problems));
      const belief = believe(made.value);
      const advice = quickAdvice(made.value);

      expect(belief.kind, `${tree.id} ${seed}`).toBe('good');
      if (advice.kind === 'bad') throw new Error(`${tree.id} ${seed}: no advice`);
      const { kind, next } = advice.value;
      expect(kind === 'proved' || next.length > 0, `${tree.id} ${seed}`).toBe(true);
    }
  expect([...said].toSorted()).toEqual([
    'comes-and-goes',
    'misread-now',
    'misread-then',
    'new-since',
  ]);
});
