import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { skeleton } from '../../src/core/tree/skeleton.ts';
import { absent, jsonSchemaRead, outsideValidator } from './outside.ts';

const read = (path: string): unknown => JSON.parse(readFileSync(path, 'utf8'));
const trees = readdirSync('trees').filter(
  (name) => name.endsWith('.json') && name !== 'shop.json' && !name.endsWith('.schema.json'),
);

/** A small sound tree of format 2, with one thing changed. */
function treeWith(change: (tree: Loose) => void): unknown {
  const tree = structuredClone(sound);
  change(tree);
  return tree;
}

type Loose = { [key: string]: Loose };

const sound = JSON.parse(readFileSync('tests/fixtures/schema/horn.json', 'utf8')) as Loose;

// Held against ajv 8, a JSON Schema validator by other hands (draft 2020-12, strict).
describe.skipIf(!jsonSchemaRead)(
  `the tree schema as another validator reads it (${absent})`,
  () => {
    const valid = jsonSchemaRead ? outsideValidator(read('trees/tree.schema.json')) : () => [];

    test.each(trees)('takes %s', (name) => {
      expect(valid(read(`trees/${name}`))).toEqual([]);
    });

    test('takes a tree to begin with, and a small one of format 2', () => {
      expect([valid(skeleton('my-complaint')), valid(sound)]).toEqual([[], []]);
    });

    const look = (tree: Loose) => tree['checks']?.['fuse-look'] as Loose;
    const volts = (tree: Loose) => tree['checks']?.['horn-volts'] as Loose;
    const set = (node: Loose, key: string, value: unknown) => Object.assign(node, { [key]: value });

    test.each<[string, (tree: Loose) => void]>([
      ['a caution that the shop has not', (tree) => set(look(tree), 'cautions', ['bite'])],
      ['a tool that the shop has not', (tree) => set(look(tree), 'tools', ['multimeter'])],
      ['an access that the shop has not', (tree) => set(look(tree), 'access', ['hatch'])],
      ['a fact that nobody asks', (tree) => set(look(tree), 'when', { relay: 'yes' })],
      ['a value that the fact has not', (tree) => set(look(tree), 'when', { volts: '24-volt' })],
      ['a unit of another quantity', (tree) => set(volts(tree)['reading'] as Loose, 'unit', 'A')],
      ['a question too long', (tree) => set(look(tree), 'ask', 'x'.repeat(61))],
      ['minutes that no check takes', (tree) => set(look(tree), 'minutes', 9000)],
      ['limits without a reading', (tree) => delete volts(tree)['reading']],
      [
        'a way that is none',
        (tree) => set(look(tree)['results']?.[0] as Loose, 'next', 'cause: fuse'),
      ],
      [
        'a stop without a reason',
        (tree) => set(look(tree)['results']?.[0] as Loose, 'next', 'stop'),
      ],
      ['a check without a source', (tree) => delete look(tree)['source']],
      ['a reading without its healthy words', (tree) => delete volts(tree)['healthy']],
      ['a result that leads nowhere', (tree) => delete look(tree)['results']?.[0]?.['next']],
      ['a key misspelt', (tree) => set(look(tree), 'minuts', 2)],
      [
        'a capital in an id',
        (tree) => set(tree['causes'] as Loose, 'Fuse', tree['causes']?.['fuse']),
      ],
    ])('refuses %s', (_, change) => {
      expect(valid(treeWith(change))).not.toEqual([]);
    });
  },
);
