import { expect, test } from 'vitest';
import { refinedAdvice } from '../../../../src/core/reason/advice/advise.ts';
import type { Advice } from '../../../../src/core/reason/advice/advice.ts';
import { inputFrom, leftOut } from '../../../../src/core/reason/history/from-story.ts';
import type { Action } from '../../../../src/core/session/action.ts';
import { shippedShop, shippedTree } from '../../../helpers/library.ts';
import { after, headerFor } from '../../../helpers/story.ts';

/*
 * Facts of the trade that the shipped trees and the advice must hold to. Each: common practice, no
 * source.
 */

const known = new Map<string, Advice>();

/** What is advised there: worked out once for all tests that ask for the same. */
function advised(tree: string, actions: readonly Action[]): Advice {
  const key = JSON.stringify([tree, actions]);
  const advice = known.get(key) ?? adviseAnew(tree, actions);
  known.set(key, advice);
  return advice;
}

function adviseAnew(tree: string, actions: readonly Action[]): Advice {
  const header = headerFor(shippedTree(tree), shippedShop());
  const { story } = after(actions, header);
  const made = inputFrom(story);
  const advice =
    made.kind === 'good' ? refinedAdvice(made.value, { leaveOut: leftOut(story) }) : made;
  if (advice.kind === 'bad') throw new Error(advice.problems[0]?.message);
  return advice.value;
}

const atSeaLevel: Action = { do: 'conditions', altitude: '0 ft' };
const hunts: Action = { do: 'find', check: 'idle-check', result: 'hunts' };
const fifteen: readonly Action[] = [
  { do: 'find', check: 'choke-hot', result: 'open' },
  { do: 'find', check: 'vac-level', reading: '15 inHg' },
];

test('15 inHg at sea level with a loose fitting on the manifold puts air leaks first', () => {
  const loose: Action = { do: 'find', check: 'hose-walk', result: 'loose' };

  const { suspects } = advised('rough-idle', [atSeaLevel, hunts, ...fifteen, loose]);

  expect(suspects[0]?.cause).toBe('vac-hose');
});

test('with 15 inHg a two-minute look at the hoses comes before any carburetor strip', () => {
  const { next } = advised('rough-idle', [atSeaLevel, hunts, ...fifteen]);
  const place = (id: string): number => next.findIndex((step) => step.id === id);

  expect(place('hose-walk')).toBeGreaterThanOrEqual(0);
  for (const strip of ['idle-jet', 'float-high', 'throttle-shaft'])
    expect([strip, place(strip) < 0 || place('hose-walk') < place(strip)]).toEqual([strip, true]);
});

test('what takes the dash apart is not advised first while a short check can still part the suspects', () => {
  const { next } = advised('no-supply', [{ do: 'find', check: 'lamps-horn', result: 'dead' }]);
  const apart = new Set(['under-dash', 'under-dash-deep', 'cluster-out']);
  const tree = shippedTree('no-supply');
  const first = next[0];
  const access =
    first?.do === 'check'
      ? tree.checks[first.id]?.access
      : tree.causes[first?.id ?? '']?.repair.access;

  expect((access ?? []).filter((one) => apart.has(one))).toEqual([]);
});

test('with starter stud, link, bulkhead and grounds good and the far side of the ammeter dead, the ammeter leads', () => {
  const { suspects } = advised('no-supply', [
    { do: 'find', check: 'lamps-horn', result: 'horn-only' },
    { do: 'find', check: 'bat-rest-volts', reading: '12.6 V' },
    { do: 'find', check: 'ground-drop', reading: '0.02 V' },
    { do: 'find', check: 'stud-volts', reading: '12.55 V 12.5 V' },
    { do: 'find', check: 'bulk-engine-volts', reading: '12.55 V 12.4 V' },
    { do: 'find', check: 'bulk-drop', reading: '0.02 V' },
    { do: 'find', check: 'ammeter-volts', reading: '12.55 V 12.4 V' },
    { do: 'find', check: 'ammeter-drop', reading: '12.2 V' },
  ]);

  expect(suspects[0]?.cause).toBe('ammeter');
  const { repair } = shippedTree('no-supply').causes['ammeter'] ?? { repair: undefined };
  expect(repair?.do[0]).toMatch(/join the meter's two leads on one stud for the test/);
  expect(repair?.do[1]).toMatch(/no thinner than the main feed wire/);
  expect(repair?.cautions).toContain('wire-fire');
});

const lately: Action = { do: 'find', check: 'crank-safe', result: 'lately' };
const clicks: Action = { do: 'find', check: 'start-sound', result: 'silent' };
const bridged: Action = { do: 'find', check: 'remote-button', result: 'strong' };

test('an engine that cranks when the relay is bridged clears battery, cables and block ground', () => {
  const before = advised('no-crank', [lately, clicks]);
  const cranked = advised('no-crank', [lately, clicks, bridged]);
  const chance = (advice: Advice, id: string): number =>
    advice.suspects.find(({ cause }) => cause === id)?.chance ?? 0;

  for (const id of ['battery-flat', 'battery-failed', 'pos-cable', 'ground-main'])
    expect([id, chance(cranked, id) < chance(before, id) / 2]).toEqual([id, true]);
});

test('with two faults at once the advice goes on until both are repaired and proven', () => {
  const header = headerFor(shippedTree('no-supply'), shippedShop());
  const faults = ['post-film', 'bulkhead'];
  const actions: Action[] = [{ do: 'find', check: 'lamps-horn', result: 'dead' }];
  for (let step = 0; step < 60; step += 1) {
    const { story } = after(actions, header);
    if (story.proofs.at(-1)?.good === true) break;
    const made = inputFrom(story);
    const advice =
      made.kind === 'good' ? refinedAdvice(made.value, { leaveOut: leftOut(story) }) : made;
    if (advice.kind === 'bad') throw new Error(advice.problems[0]?.message);
    const first = advice.value.next[0];
    if (first === undefined) break;
    actions.push(done(first, faults, actions));
  }

  const { story } = after(actions, header);
  expect(story.proofs.at(-1)?.good).toBe(true);
  expect(story.repairs.map(({ cause }) => cause)).toEqual(expect.arrayContaining(faults));
});

/** What a vehicle with exactly these faults shows: the most typical result of the worst one left. */
function done(
  step: Advice['next'][number],
  faults: readonly string[],
  before: readonly Action[],
): Action {
  if (step.do === 'repair') return { do: 'repair', cause: step.id };
  const tree = shippedFilled();
  const check = tree.checks[step.id];
  const mended = before.flatMap((action) => (action.do === 'repair' ? [action.cause] : []));
  const left = faults.filter((cause) => !mended.includes(cause));
  const rows = left.flatMap((cause) => check?.points[cause] ?? []);
  const shows = left.map((cause) => typical(check?.points[cause] ?? check?.background ?? []));
  const worst = Math.max(0, ...shows);
  const proof = step.id === tree.complaint.confirm;
  const index = proof ? (left.length > 0 ? 3 : 0) : rows.length === 0 ? 0 : worst;
  const result = check?.results[index]?.id ?? '';
  const repaired = mended.length > 0 && proof;
  return repaired ? { do: 'prove', result } : { do: 'find', check: step.id, result };
}

const typical = (row: readonly number[]): number => row.indexOf(Math.max(...row));

const shippedFilled = () => {
  const header = headerFor(shippedTree('no-supply'), shippedShop());
  const leg = after([], header).story.legs[0];
  if (leg === undefined) throw new Error('no leg');
  return leg.tree;
};
