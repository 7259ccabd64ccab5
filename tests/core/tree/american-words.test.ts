import { describe, expect, it } from 'vitest';
import { shippedShop, shippedTrees } from '../../helpers/library.ts';

/** British words of the trade, none of which may stand on a screen; common practice, no source. */
const british =
  /\b(sump|loom|bonnet|windscreen|spanner|petrol|gearbox|dynamo|silencer|tyres?|earthed|paraffin|pinking|woolly|wing mirror|accumulator)\b/i;

/** Ids are lower-case words with hyphens; nobody reads them. */
const id = /^[a-z0-9:-]+$/;

/** Every text of a value that is read, with its path. */
function textsOf(value: unknown, path = ''): readonly (readonly [path: string, text: string])[] {
  if (typeof value === 'string') return id.test(value) ? [] : [[path, value]];
  if (value === null || typeof value !== 'object') return [];
  return Object.entries(value).flatMap(([key, inner]) => textsOf(inner, `${path}/${key}`));
}

const britishIn = (value: unknown): readonly string[] =>
  textsOf(value).flatMap(([path, text]) => (british.test(text) ? [`${path}: ${text}`] : []));

describe('words on the screens', () => {
  it.each(shippedTrees().map((tree) => [tree.id, tree] as const))(
    '%s',
    (_, { written, ...tree }) => {
      expect(britishIn(tree)).toEqual([]);
    },
  );

  it('the shop', () => {
    expect(britishIn(shippedShop())).toEqual([]);
  });

  it('finds one that is planted', () => {
    expect(
      britishIn({ cautions: { lock: { text: 'Fuel in the sump.' } }, do: ['The loom.'] }),
    ).toEqual(['/cautions/lock/text: Fuel in the sump.', '/do/0: The loom.']);
  });
});
