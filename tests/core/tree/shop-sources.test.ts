import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { z } from 'zod';

const shopFile = z.object({
  sources: z.record(
    z.string(),
    z.object({ title: z.string(), address: z.url().optional(), mark: z.string() }),
  ),
});
const { sources } = shopFile.parse(JSON.parse(readFileSync('trees/shop.json', 'utf8')));

/** Universities, governments, armies and bodies that publish standards. */
const publicBody = /\.(?:edu|gov|mil|int)$|(?:^|\.)(?:legislation\.gov\.uk|iso\.org|iec\.ch)$/;

test('a source has an address only where a public body keeps the page', () => {
  const others = Object.entries(sources).filter(
    ([, { address }]) => address !== undefined && !publicBody.test(new URL(address).hostname),
  );
  expect(others.map(([id]) => id)).toEqual([]);
});

test('what was read has its address or names the publication, the rest says that it has no source', () => {
  const named = /\b(?:US Army|US Navy|SAE|ISO|IEC|EU|UK|CFR)\b/;
  const bare = Object.entries(sources).filter(
    ([, { address, mark, title }]) =>
      mark.startsWith('read') && address === undefined && !named.test(title),
  );
  expect(bare.map(([id]) => id)).toEqual([]);
});
