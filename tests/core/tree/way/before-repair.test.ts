import { describe, expect, test } from 'vitest';
import { quickAdvice } from '../../../../src/core/reason/advice/advise.ts';
import { inputFrom } from '../../../../src/core/reason/history/from-story.ts';
import type { Story } from '../../../../src/core/session/story.ts';
import { gatesOf, gatesOfRepair } from '../../../../src/core/tree/way/gates.ts';
import { knownAfter, type Done } from '../../../../src/core/tree/way/known.ts';
import { nextOnWay } from '../../../../src/core/tree/way/way.ts';
import { parseTreeValue } from '../../../../src/core/tree/parse.ts';
import { see } from '../../../helpers/guarded.ts';
import { planted, told } from '../../../helpers/plant.ts';
import { after, headerFor, verdict } from '../../../helpers/story.ts';
import { smallShop, smallTree, smallTreeData } from '../../../helpers/tree.ts';

// A burnt fuse is not renewed before the search for the short: common practice, no source.
const otherwise = 'A new fuse burns too.';
const safeguards = [
  { before: { repair: ['fuse'] }, check: 'short', shows: ['none'], else: otherwise },
];
const { causes, checks } = smallTreeData();
const chafed = {
  ...causes.wire,
  name: 'Wire chafed through',
  odds: 4,
  repair: { do: ['Splice it.'], minutes: 20 },
};
const short = {
  ...checks.look,
  ask: 'Is there a short behind the fuse?',
  results: [
    { id: 'none', label: 'none', next: 'volts' },
    { id: 'there', label: 'a short', next: 'cause:chafed' },
  ],
  points: { chafed: [0.05, 0.95] },
};
const withShort = {
  format: 2,
  safeguards,
  causes: { ...causes, chafed },
  checks: {
    ...checks,
    short,
    look: { ...checks.look, points: { fuse: [0.02, 0.98], chafed: [0.04, 0.96] } },
  },
};
const tree = smallTree(withShort);

const shown = (check: string, result: number): Done => ({ kind: 'shown', check, result });
const burnt = [shown('lamp', 1), shown('look', 1)];

describe('a check before a repair', () => {
  test('is a gate of that repair, and of no other step', () => {
    expect(gatesOfRepair(tree, 'fuse')).toEqual([
      { kind: 'safeguard', check: 'short', results: ['none'], otherwise },
    ]);
    expect(gatesOfRepair(tree, 'wire')).toEqual([]);
    expect(Object.keys(tree.checks).flatMap((id) => gatesOf(tree, id))).toEqual(
      gatesOf(smallTree(), 'volts'),
    );
  });

  test('waits for the safeguards of its own standing, as one before a standing does not', () => {
    const powered = {
      before: { battery: ['connected'] },
      check: 'look',
      shows: ['burnt'],
      else: 'No.',
    };
    const live = { ...short, standing: { battery: 'connected' } };
    const two = smallTree({
      ...withShort,
      safeguards: [...safeguards, powered],
      checks: { ...withShort.checks, short: live },
    });

    expect(gatesOf(two, 'short').map(({ check }) => check)).toEqual(['look']);
  });

  test('is asked on the own way when the cause is named, and the cause follows once it is open', () => {
    expect(nextOnWay(tree, burnt)).toEqual({ kind: 'check', check: 'short', before: 'cause:fuse' });
    expect(nextOnWay(tree, [...burnt, shown('short', 0)])).toEqual({
      kind: 'cause',
      cause: 'fuse',
    });
  });

  test('leads to what it found instead, then is asked anew', () => {
    const found = [...burnt, shown('short', 1)];
    expect(nextOnWay(tree, found)).toEqual({ kind: 'cause', cause: 'chafed' });
    // Found before the fuse was named: the short comes first all the same.
    const early = [shown('lamp', 1), shown('short', 1), shown('look', 1)];
    expect(nextOnWay(tree, early)).toEqual({ kind: 'cause', cause: 'chafed' });

    const mended = [...found, { kind: 'repaired' as const, cause: 'chafed' }];
    expect(knownAfter(tree, mended)('short')).toBeUndefined();
  });

  test('passed over opens nothing: the way stops with what the tree says', () => {
    expect(
      nextOnWay(tree, [shown('lamp', 1), { kind: 'passed', check: 'short' }, shown('look', 1)]),
    ).toEqual({
      kind: 'stop',
      reason: otherwise,
    });
  });
});

describe('a repair behind its check', () => {
  const header = headerFor(tree);
  const atFuse = [see('lamp', 'dark'), see('look', 'burnt')];
  const advised = (story: Story) => {
    const input = inputFrom(story);
    const advice = input.kind === 'good' ? quickAdvice(input.value) : input;
    if (advice.kind === 'bad') throw new Error(JSON.stringify(advice.problems));
    return advice.value.next.map(({ do: what, id }) => `${what} ${id}`);
  };

  test('is refused, taken with an own word, and free once the check has shown none', () => {
    const { story } = after(atFuse, header);
    const repair = { do: 'repair', cause: 'fuse' } as const;

    expect(verdict(story, repair)).toBe('safeguard-shut');
    expect(verdict(story, { ...repair, despite: 'The short was found last week' })).toBe(
      'accepted',
    );
    expect(verdict(after([...atFuse, see('short', 'there')], header).story, repair)).toBe(
      'safeguard-shut',
    );
    expect(verdict(after([...atFuse, see('short', 'none')], header).story, repair)).toBe(
      'accepted',
    );
    expect(verdict(story, { do: 'repair', cause: 'wire' })).toBe('accepted');
  });

  test('is not advised before, and is after', () => {
    expect(advised(after(atFuse, header).story)).not.toContain('repair fuse');
    expect(advised(after([...atFuse, see('short', 'none')], header).story)[0]).toBe('repair fuse');
    // Without the rule the fuse would be advised: the test can fail.
    const free = headerFor(smallTree({ ...withShort, safeguards: [] }));
    expect(advised(after(atFuse, free).story)).toContain('repair fuse');
  });
});

test('a cause that the tree has not, and nothing to wait, are told', () => {
  const parse = (before: unknown) =>
    told(
      parseTreeValue(
        planted(
          ['format', 2],
          ['safeguards', [{ ...safeguards[0], check: 'look', shows: ['whole'], before }]],
        ),
        'small.json',
        smallShop,
      ),
    );

  expect(parse({ repair: ['fuse'] })).toEqual([]);
  expect(parse({ repair: ['fuze'] })).toEqual(['unknown-cause safeguards[0].before.repair[0]']);
  expect(parse({})).toHaveLength(1);
});
