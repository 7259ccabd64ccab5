import { expect, test } from 'vitest';
import { beliefHistory, chancesNow } from '../../../src/core/reason/history/belief-history.ts';
import { inputFrom } from '../../../src/core/reason/history/from-story.ts';
import type { Action } from '../../../src/core/session/action.ts';
import { fold } from '../../../src/core/session/fold.ts';
import { decide } from '../../../src/core/session/rules/rules.ts';
import { currentLeg } from '../../../src/core/session/story.ts';
import { bareTree } from '../../../src/core/tree/own/bare.ts';
import { shippedShop, shippedTrees } from '../../helpers/library.ts';
import { after, headerFor, verdict } from '../../helpers/story.ts';

const shop = shippedShop();
const header = headerFor(bareTree('Wipers stop half way'), shop);
const confirm = 'own-wipers-stop-half-way-test';
const testNamed: Action = {
  do: 'name-check',
  test: true,
  what: 'the wipers on a wet windshield',
  bad: 'they stop half way',
  good: 'they sweep the whole glass',
};
const shown: Action = { do: 'find', check: confirm, result: 'bad' };
const volts: Action = {
  do: 'name-check',
  does: 'measure',
  what: 'volts at the motor',
  good: '11 V or more',
};
const ground: Action = { do: 'name-cause', name: 'wiper ground rusted', where: 'under the cowl' };

const dueAfter = (...actions: readonly Action[]) => after(actions, header).story.due;

test("the complaint's own test is named first, then made, then the person says what comes", () => {
  expect(dueAfter()).toEqual({ kind: 'own', test: true });
  expect(dueAfter(testNamed)).toEqual({ kind: 'check', check: confirm, why: 'way' });
  expect(dueAfter(testNamed, shown)).toEqual({ kind: 'own', test: false });
});

test('a check that is named is begun at once, and judged by the band that was told', () => {
  const { story } = after([testNamed, shown, volts], header);
  const id = 'volts-motor';

  expect(story.due).toEqual({ kind: 'check', check: id, why: 'chosen' });
  expect(currentLeg(story).tree.checks[id]).toMatchObject({
    kind: 'measure',
    told: 'volts at the motor',
  });
  const low = after(
    [testNamed, shown, volts, { do: 'find', check: id, reading: '7.5' }],
    header,
  ).story;
  expect(low.findings.at(-1)).toMatchObject({ result: 'low' });
});

test('what exactly was found is kept with the finding, said at once or afterwards', () => {
  const look: Action = { do: 'name-check', does: 'look', what: 'the wiper fuse', good: 'whole' };
  const found: Action = {
    do: 'find',
    check: 'wiper-fuse',
    result: 'good',
    text: 'whole, clips green',
  };
  const at = after([testNamed, shown, look, found], header);
  const n = at.events.at(-1)?.n ?? 0;

  expect(at.story.findings.at(-1)?.words).toBe('whole, clips green');
  const anew: Action = { do: 'describe', n, text: 'whole, clips rusty' };
  expect(after([testNamed, shown, look, found, anew], header).story.findings.at(-1)?.words).toBe(
    'whole, clips rusty',
  );
});

test('a cause that is named is asked about, condemned, mended and proven like any other', () => {
  const named = [testNamed, shown, ground] as const;
  const cause = 'wiper-ground-rusted';
  const condemned = [
    ...named,
    { do: 'condemn', cause, text: 'ring terminal rusted through' },
  ] as const;
  const repaired = [...condemned, { do: 'repair', cause, text: 'new ring terminal' }] as const;

  expect(dueAfter(...named)).toEqual({ kind: 'named', cause });
  expect(dueAfter(...condemned)).toEqual({ kind: 'repair', cause });
  expect(dueAfter(...repaired)).toEqual({ kind: 'proof', cause });
  expect(dueAfter(...repaired, { do: 'prove', result: 'bad' })).toEqual({
    kind: 'own',
    test: false,
  });
  expect(dueAfter(...repaired, { do: 'prove', result: 'good' })).toEqual({ kind: 'proven' });
  expect(dueAfter(...named, { do: 'not-this', cause })).toEqual({ kind: 'own', test: false });
});

test('one press takes a named check back together with its beginning', () => {
  const { story } = after([testNamed, shown, volts, { do: 'take-back' }], header);

  expect(story.due).toEqual({ kind: 'own', test: false });
  expect(Object.keys(currentLeg(story).tree.checks)).toEqual([confirm]);
});

test('a name is not taken back while something that was found stands on it', () => {
  const { story, events } = after([testNamed, shown], header);
  const n = events.find(({ kind }) => kind === 'check-named')?.n ?? 0;

  expect(verdict(story, { do: 'correct', n, withdraw: true })).toBe('still-used');
});

test('words that speak of a hazard bring its caution, and work that nothing makes safe is refused', () => {
  const fuel: Action = { do: 'name-check', does: 'look', what: 'the fuel line at the pump' };
  const { story } = after([testNamed, shown, fuel], header);

  expect(currentLeg(story).tree.checks['fuel-line-pump']?.cautions).toEqual(['fuel-fire']);
  expect(
    verdict(story, { do: 'name-check', does: 'look', what: 'the fuel tank with a lit match' }),
  ).toBe('hazard-refused');
});

test('a check of the library comes with its cautions and limits, and leads nowhere', () => {
  const { story } = after([testNamed, shown], header);
  const trees = shippedTrees();
  const world = {
    tree: (id: string) => {
      const found = trees.find((one) => one.id === id);
      return found && { tree: found, shop };
    },
  };
  const [tree] = trees;
  const [check = ''] = Object.keys(tree?.checks ?? {});
  const ruling = decide(story, { do: 'take-check', tree: tree?.id ?? '', check }, world);

  expect(ruling).toMatchObject({
    payloads: [{ kind: 'check-taken', check }, { kind: 'check-begun' }],
  });
  const [taken] = ruling.kind === 'accepted' ? ruling.payloads : [];
  expect(JSON.stringify(taken)).not.toMatch(/"next"|"background"|"shows-with"/);
});

test('in a job with a tree nothing is named in own words, but another complaint may be', () => {
  const { story } = after([]);

  expect(verdict(story, volts)).toBe('has-a-tree');
  expect(verdict(story, ground)).toBe('has-a-tree');
  const leg = after([{ do: 'own-leg', say: 'Wipers stop half way' }]).story;
  expect([leg.legs.length, leg.due]).toEqual([2, { kind: 'own', test: true }]);
});

test('nothing is believed of causes that nobody gave odds', () => {
  const { story } = after([testNamed, shown, ground], header);

  expect([beliefHistory(story), chancesNow(story)]).toEqual([[], undefined]);
  expect(inputFrom(story)).toMatchObject({ kind: 'bad', problems: [{ code: 'no-odds' }] });
});

test('an empty name names nothing', () => {
  const story = fold(header, []);

  expect(verdict(story, { do: 'name-check', what: ' ' })).toBe('nothing-said');
  expect(verdict(story, { do: 'name-cause', name: '' })).toBe('nothing-said');
  expect(verdict(story, { do: 'own-leg', say: ' ' })).toBe('nothing-said');
});
