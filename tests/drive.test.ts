import { describe, expect, test } from 'vitest';
import type { Tree } from '../src/core/tree/model.ts';
import { drive, type Lead } from './helpers/drive/drive.ts';
import { metered } from './helpers/drive/meter.ts';
import { Script, shownBy } from './helpers/drive/script.ts';
import { faultsOf, slipsOf } from './helpers/drive/verdict.ts';
import { smallShop, smallTree, smallTreeData } from './helpers/tree.ts';

const burntFuse = {
  tree: 'no-light',
  vehicle: 'a cart with a burnt fuse',
  causes: ['fuse'],
  shows: { lamp: 'dark', look: 'burnt' },
  master: 4,
};
const both = {
  ...burntFuse,
  causes: ['fuse', 'wire'],
  shows: { lamp: 'dark', look: { fuse: 'burnt' }, volts: '0.3 V' },
  master: 8,
};

type Change = Partial<Record<keyof Script, unknown>>;

function faults(of: Change, tree: Tree = smallTree(), lead: Lead = 'tree'): readonly string[] {
  const script = Script.parse(of);
  const done = drive({ name: 'no-light-cart', script }, { tree, shop: smallShop }, lead);
  return faultsOf(script, done, lead);
}

test.each(['tree', 'quicker'] as const)('one fault and two are mended, led by %s', (lead) => {
  expect(faults(burntFuse, smallTree(), lead)).toEqual([]);
  expect(faults(both, smallTree(), lead)).toEqual([]);
});

test('a way that condemns what is sound is told, with what was repaired for nothing', () => {
  const said = faults({ ...burntFuse, causes: ['wire'], wrongAtMost: 0 });

  expect(said).toContain('repaired what was sound: fuse');
});

test('a way that ends before the fault is found is told', () => {
  expect(faults({ ...burntFuse, causes: ['wire'], shows: { lamp: 'dark' } })).toContain(
    'it ended at a stop: Neither fits.',
  );
});

test('a fault that is left when the complaint is gone is told', () => {
  expect(faults({ ...both, shows: { ...both.shows, lamp: { fuse: 'dark' } } })).toContain(
    'still there: wire',
  );
});

test('more than one and a half times the steps of a master are told', () => {
  expect(faults({ ...burntFuse, master: 2 })).toEqual([
    '4 steps, a master takes 2 (at most 1.5 times that)',
  ]);
});

test('a step that may not be asked of the vehicle is told', () => {
  expect(faults({ ...both, never: ['look'] })).toEqual(['"look" may not be asked of this vehicle']);
});

test('a step is told that puts the vehicle as it may not be put', () => {
  expect(faults({ ...both, neverWith: { key: ['run'] } })).toEqual([]);
  const { checks, ...rest } = smallTreeData();
  const tree = smallTree({
    ...rest,
    checks: { ...checks, look: { ...checks.look, standing: { engine: 'idling' } } },
  });

  expect(faults({ ...both, neverWith: { engine: ['running'] } }, tree)).toEqual([
    '"look" may not be asked of this vehicle',
  ]);
});

test('a reading that the program refuses is told with its mend', () => {
  const said = faults({ ...both, shows: { ...both.shows, volts: '400 V' } });

  expect(said.some((line) => line.startsWith('refused: '))).toBe(true);
});

test('a complaint that gets worse by a repair of what was bad is told', () => {
  const { checks, ...rest } = smallTreeData();
  const [lit, dark] = checks.lamp.results;
  const lamp = { ...checks.lamp, results: [lit, dark, { ...dark, id: 'dim', label: 'it glows' }] };
  const tree = smallTree({ ...rest, checks: { ...checks, lamp } });
  const shows = { ...both.shows, lamp: { fuse: 'dark', wire: 'dim' } };

  expect(faults({ ...both, shows }, tree)).toContain(
    '"lamp" shows worse than before, by a repair of what was bad',
  );
});

test('a fault on no list ends at a stop, and a part bought for it is told', () => {
  const off = { ...burntFuse, causes: ['switch'], end: 'unlisted', wrongAtMost: 9 };

  expect(faults({ ...off, shows: { lamp: 'dark' } })).toEqual([]);
  const { causes, ...rest } = smallTreeData();
  const fuse = { ...causes.fuse, repair: { ...causes.fuse.repair, parts: ['fuse'] } };
  const tree = smallTree({ ...rest, causes: { ...causes, fuse } });
  expect(faults(off, tree)).toContain('a part was bought for fuse');
});

test('what a tree only sorts may not be closed as fixed', () => {
  expect(faults({ ...burntFuse, end: 'inspection' })).toEqual(['it could be closed as fixed']);
});

test('a slip in a script is told: it would count as healthy', () => {
  const slips = (change: Change) => slipsOf(Script.parse({ ...burntFuse, ...change }), smallTree());

  expect(slips({})).toEqual([]);
  expect(slips({ causes: ['fusse'] })).toEqual(['the tree has no cause "fusse"']);
  expect(slips({ causes: ['fuse'], end: 'unlisted' })).toEqual(['"fuse" is listed']);
  expect(slips({ shows: { lamp: 'dark', lok: 'burnt' } })).toEqual([
    'the tree has no check "lok" on this vehicle',
  ]);
  expect(slips({ shows: { look: { wire: 'burnt' } } })).toEqual([
    '"look" names "wire", which the vehicle has not',
    '"shows" must say what the complaint\'s test shows: "lamp"',
  ]);
});

test('what a check shows goes by the faults that are left', () => {
  const shows = {
    plain: 'a',
    own: { fuse: 'b', wire: 'c' },
    // oxlint-disable-next-line unicorn/no-thenable -- a word of the script, never awaited
    either: { while: 'wire', then: { fuse: 'd', wire: 'e' }, else: 'f' },
  };
  const script = Script.parse({ ...both, shows, sound: { own: 'g' } });
  const after = (...mended: string[]) =>
    ['plain', 'own', 'either'].map((check) => shownBy(script, check, mended));

  expect(after()).toEqual(['a', 'b', 'd']);
  expect(after('fuse')).toEqual(['a', 'c', 'e']);
  expect(after('wire')).toEqual(['a', 'b', 'f']);
  expect(after('fuse', 'wire')).toEqual([undefined, 'g', 'f']);
});

test('a meter wobbles within half its usual error, anew each time, and the same for one seed', () => {
  const { volts } = smallTree().checks;
  if (volts === undefined) throw new Error('the small tree measures volts');
  const read = Array.from({ length: 50 }, (_, time) => metered(volts, '12.40 V', `cart ${time}`));
  const values = read.map((text) => Number.parseFloat(text ?? ''));

  // Usual error of a hand-held meter at 12.4 V, from the table of usual errors: 0.104 V.
  expect(Math.max(...values.map((value) => Math.abs(value - 12.4)))).toBeLessThanOrEqual(0.06);
  expect(new Set(read).size).toBeGreaterThan(5);
  expect(metered(volts, '12.40 V', 'cart 7')).toBe(read[7]);
  expect(metered(volts, 'OL', 'cart')).toBe('OL');
  expect(metered(volts, 'burnt', 'cart')).toBeUndefined();
});

describe('a vehicle that one tree leads on to another', () => {
  const { checks, ...rest } = smallTreeData();
  const { lamp, look, volts } = checks;
  const [lit, dark] = lamp.results;
  const on = { next: 'tree:dim-light', reason: 'It is not dark.' };
  const first = smallTree({
    ...rest,
    checks: {
      ...checks,
      look: { ...look, results: [{ ...look.results[0], ...on }, look.results[1]] },
    },
  });
  const second = (seen: typeof look) =>
    smallTree({
      ...rest,
      id: 'dim-light',
      complaint: { say: 'It glows.', confirm: 'glow' },
      checks: { glow: { ...lamp, results: [lit, { ...dark, id: 'glows' }] }, look: seen, volts },
    });
  const driven = (of: Change, onto = second(look)) => {
    const script = Script.parse({
      ...burntFuse,
      causes: ['wire'],
      onto: ['dim-light'],
      shows: { lamp: 'dark', glow: 'glows', volts: '0.3 V' },
      master: 7,
      ...of,
    });
    const books = { tree: first, shop: smallShop, library: [onto] };
    return faultsOf(script, drive({ name: 'cart', script }, books, 'tree'), 'tree');
  };

  test('is driven through both, and what was found goes along', () => {
    expect(driven({})).toEqual([]);
  });

  test('is told where it was not led on', () => {
    expect(driven({ causes: ['fuse'], shows: { lamp: 'dark', look: 'burnt' } })).toContain(
      'it was led by no-light alone',
    );
  });

  test('is told where the second asks again what the first had asked', () => {
    const [whole, burnt] = look.results;
    const other = { ...look, results: [{ ...whole, id: 'sound' }, burnt] } as typeof look;

    expect(driven({}, second(other))).toContain('"look" is asked again by the tree dim-light');
  });
});
