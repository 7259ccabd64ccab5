import { expect, test } from 'vitest';
import { solveFeed } from '../../../../src/core/feed/settle.ts';
import { vehicleAnswer } from '../../../../src/core/reason/practice/answer.ts';
import { checkReveal } from '../../../../src/core/reason/practice/held.ts';
import { hideFault, saltOf } from '../../../../src/core/reason/practice/hide.ts';
import { asWalked } from '../../../../src/core/session/header/walked-tree.ts';
import { fold, type Recorded } from '../../../../src/core/session/fold.ts';
import { sha256 } from '../../../../src/store/recover.ts';
import { shippedTree, shippedTrees } from '../../../helpers/library.ts';
import { practiceOn } from '../../../helpers/practice/begun.ts';
import { play, type Policy } from '../../../helpers/practice/play.ts';

const mendable = shippedTrees().filter(({ triage }) => triage === undefined);
const vehicle = { facts: {} };

/** All bytes of a record but its commitment, up to the event that tells the fault. */
const bytesBefore = ({ header, events }: Recorded, end = events.length): string =>
  JSON.stringify([{ ...header, practice: undefined }, ...events.slice(0, end)]);

const endOf = ({ events }: Recorded): number => {
  const at = events.findIndex(({ kind }) => kind === 'revealed');
  return at < 0 ? events.length : at;
};

test('a check made again shows the same until something is mended', () => {
  const tree = shippedTree('no-supply');
  const { header, secret } = practiceOn(tree, { seed: 'again', causes: ['bulkhead'] });
  const story = fold(header, []);
  const ids = Object.keys(story.legs[0]?.tree.checks ?? {});
  const shown = () => ids.map((id) => vehicleAnswer(story, secret, id));

  expect(shown()).toEqual(shown());
  expect(ids.length).toBeGreaterThan(15);
});

test('the first line is the same bytes whatever is hidden, but for the commitment', () => {
  for (const tree of mendable) {
    const headers = Object.keys(tree.causes).flatMap((cause) => {
      const made = hideFault(asWalked(tree, vehicle), {
        salt: saltOf('x', tree.id, sha256),
        hard: false,
        causes: [cause],
      });
      if (made.kind === 'bad') return [];
      const { header } = practiceOn(tree, { seed: 'x', causes: [cause] });
      return [{ header, events: [] }];
    });

    expect(new Set(headers.map((one) => bytesBefore(one))).size).toBe(1);
    expect(new Set(headers.map(({ header }) => header.practice?.commitment)).size).toBe(
      headers.length,
    );
    expect(headers.length).toBeGreaterThan(5);
  }
});

test('no byte before the end holds the salt or the seed, and none follows from the hidden cause but by its answers', () => {
  const tree = shippedTree('no-supply');
  const begun = practiceOn(tree, { seed: 'a seed nobody writes', hard: true });
  const { recorded } = play(begun, 'own way');
  const before = bytesBefore(recorded, endOf(recorded));

  expect(endOf(recorded)).toBe(recorded.events.length - 1);
  for (let from = 0; from + 8 <= begun.secret.salt.length; from += 1)
    expect(before).not.toContain(begun.secret.salt.slice(from, from + 8));
  expect(before).not.toContain('a seed nobody writes');
});

test('two vehicles with other faults leave the same bytes up to the first answer that differs', () => {
  const tree = shippedTree('no-supply');
  const [one, other] = ['bulkhead', 'ammeter'].map((cause) =>
    play(practiceOn(tree, { seed: 'twins', causes: [cause] }), 'own way'),
  );
  const events = [one, other].map((played) => played?.recorded.events ?? []);
  const differs = events[0]?.findIndex(
    (event, at) => JSON.stringify(event) !== JSON.stringify(events[1]?.[at]),
  );
  const first = events[0]?.[differs ?? -1];

  // Only an answer of the vehicle, or its time after one, may tell them apart.
  expect(first?.kind).toBe('found');
});

test('each cause is hidden as often as its odds say', () => {
  const tree = asWalked(shippedTree('no-supply'), vehicle);
  const total = Object.values(tree.causes).reduce((sum, { odds }) => sum + odds, 0);
  const draws = 3000;
  const counts = new Map<string, number>();
  for (let draw = 0; draw < draws; draw += 1) {
    const hidden = hideFault(tree, {
      salt: saltOf(String(draw), tree.id, sha256),
      hard: false,
      causes: [],
    });
    if (hidden.kind === 'bad') throw new Error('nothing hidden');
    const [cause = ''] = hidden.value.causes;
    counts.set(cause, (counts.get(cause) ?? 0) + 1);
  }

  for (const [cause, { odds }] of Object.entries(tree.causes)) {
    const share = odds / total;
    const spread = Math.sqrt((share * (1 - share)) / draws);
    expect(Math.abs((counts.get(cause) ?? 0) / draws - share)).toBeLessThan(4 * spread);
  }
});

test('volts of a feed path are those of the circuit, within the error of the meter', () => {
  const tree = asWalked(shippedTree('slow-crank'), vehicle);
  const { feed } = tree;
  if (feed === undefined) throw new Error('no feed path');
  const sound = Object.entries(tree.checks).filter(
    ([, check]) => check.feed?.reads === 'volts' && check.readings === undefined,
  );
  // A fault beside the path: what is read on it is a sound one's.
  const beside =
    Object.entries(tree.causes).find(([, { fault }]) => fault === undefined)?.[0] ?? '';
  const { header, secret } = practiceOn(shippedTree('slow-crank'), {
    seed: 'volts',
    causes: [beside],
  });
  const mended = fold(header, []);
  const within = sound.map(([id, check]) => {
    const { station, against = feed.battery.negative, load } = check.feed!;
    const { volts } = solveFeed(feed, { on: load });
    const answer = vehicleAnswer({ ...mended, repairs: repaired(mended, beside) }, secret, id);
    return Math.abs(Number.parseFloat(String(answer?.reading)) - (volts(station) - volts(against)));
  });

  expect(within.length).toBeGreaterThan(2);
  expect(Math.max(...within)).toBeLessThan(5 * feed.spread.meter + 0.006);
});

const repaired = (story: ReturnType<typeof fold>, cause: string) => [
  ...story.repairs,
  { n: 1, stamp: { at: '', run: '', mono: 0, up: 0 }, cause, parts: [], acknowledged: [], leg: 0 },
];

test.each(mendable.map(({ id }) => id))('practice on %s is played to its end', (id) => {
  const tree = shippedTree(id);
  const policies: readonly Policy[] = ['own way', 'odds'];
  for (const hard of [false, true])
    for (const policy of policies) {
      const begun = practiceOn(tree, { seed: `end ${policy}`, hard });
      const { outcome, recorded } = play(begun, policy);
      const { repairs, revealed } = fold(recorded.header, recorded.events);
      const mended = repairs.map(({ cause }) => cause);

      expect(['proven', 'stopped', 'handed over', 'unlisted']).toContain(outcome);
      // It is proven when all that was hidden is mended, and only then is it told.
      expect(outcome === 'proven').toBe(begun.secret.causes.every((one) => mended.includes(one)));
      expect(revealed?.causes).toEqual(outcome === 'proven' ? begun.secret.causes : undefined);
      expect(checkReveal(recorded, sha256)).toEqual({
        kind: outcome === 'proven' ? 'held' : 'hidden',
      });
    }
});

test('a cause that only an inspection releases is not hidden', () => {
  const tree = asWalked(shippedTree('oil-pressure'), vehicle);
  const wish = { salt: saltOf('x', tree.id, sha256), hard: false };

  expect(hideFault(tree, { ...wish, causes: ['bearings'] })).toMatchObject({
    problems: [{ code: 'only-sorts' }],
  });
  expect(hideFault(tree, { ...wish, causes: ['sender-oil'] }).kind).toBe('good');
});

test('a cause from which another tree goes on is not hidden', () => {
  const tree = asWalked(shippedTree('run-on'), vehicle);
  const wish = { salt: saltOf('x', tree.id, sha256), hard: false };

  expect(hideFault(tree, { ...wish, causes: ['hot-run'] })).toMatchObject({
    problems: [{ code: 'goes-on' }],
  });
  expect(hideFault(tree, { ...wish, causes: ['carbon'] }).kind).toBe('good');
});

test('another fault, another salt or another answer than was committed to is told', () => {
  const { recorded } = play(practiceOn(shippedTree('pings'), { seed: 'forged' }), 'odds');
  const { header, events } = recorded;
  const changed = (kind: string, change: object): Recorded => ({
    header,
    events: events.map((event) =>
      event.kind === kind ? ({ ...event, ...change } as typeof event) : event,
    ),
  });
  const told = events.find(({ kind }) => kind === 'revealed');
  const other = Object.keys(shippedTree('pings').causes).find(
    (cause) => told?.kind === 'revealed' && !told.causes?.includes(cause),
  );
  const first = events.find(({ kind }) => kind === 'found');
  const healthy =
    first?.kind === 'found' && shippedTree('pings').checks[first.check]?.results[0]?.id;

  expect(checkReveal(changed('revealed', { causes: [other] }), sha256)?.kind).toBe('other fault');
  expect(checkReveal(changed('revealed', { salt: 'a'.repeat(64) }), sha256)?.kind).toBe(
    'other fault',
  );
  expect(checkReveal(changed('found', { result: healthy }), sha256)).toMatchObject({
    kind: 'other answers',
  });
  expect(checkReveal(recorded, sha256)).toEqual({ kind: 'held' });
});
