import { describe, expect, test } from 'vitest';
import { Header, shopOf } from '../../../src/core/session/header/header.ts';
import { headerFor, stampAt } from '../../helpers/story.ts';
import { smallShop, smallTree } from '../../helpers/tree.ts';

describe('the first line of a session', () => {
  test('holds the whole tree and what it names of the shop', () => {
    const header = headerFor();

    expect(header).toMatchObject({
      format: 1,
      id: '2026-04-11-1000-orchard-van-no-light',
      opened: stampAt(0).at,
      vehicle: { name: 'Orchard van', facts: {} },
      tree: 'no-light',
    });
    expect(header.trees['no-light']).toEqual(smallTree());
    expect(header.tool).toMatch(/^droplight \d+\.\d+\.\d+/);
  });

  test('is read back as it was written', () => {
    const header = headerFor(smallTree(), smallShop, { choke: 'manual' });

    expect(Header.parse(JSON.parse(JSON.stringify(header)))).toEqual(header);
  });

  test('leaves out of the shop what the tree does not name', () => {
    const more = {
      ...smallShop,
      cautions: {
        ...smallShop.cautions,
        acid: { hazard: 'Acid', text: 'x', when: 'y', acknowledge: false },
      },
      tools: { ...smallShop.tools, scope: { name: 'Scope' } },
      accesses: { ...smallShop.accesses, floor: { name: 'Floor', open: 1, close: 1 } },
      sources: { book: { title: 'x', mark: 'read' } },
    };
    const used = shopOf(smallTree(), more);

    expect(Object.keys(used.cautions)).toEqual(['spark', 'hot']);
    expect(Object.keys(used.tools)).toEqual(['meter']);
    expect(Object.keys(used.accesses)).toEqual(['dash']);
    expect(used.sources).toEqual({});
    expect(used.facts).toEqual(smallShop.facts);
  });
});
