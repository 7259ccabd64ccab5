import { expect, test } from 'vitest';
import { firstCheck, parseNext } from '../../../src/core/tree/next.ts';
import { smallTree } from '../../helpers/tree.ts';

test.each([
  ['stop', { kind: 'stop' }],
  ['cause:fuse', { kind: 'cause', cause: 'fuse' }],
  ['tree:no-crank', { kind: 'tree', tree: 'no-crank' }],
  ['look', { kind: 'check', check: 'look' }],
  ['stopper', { kind: 'check', check: 'stopper' }],
  ['cause:', { kind: 'cause', cause: '' }],
])('"%s" says where a result leads', (text, next) => {
  expect(parseNext(text)).toEqual(next);
});

test('a walk begins by making the complaint happen', () => {
  expect(firstCheck(smallTree())).toBe('lamp');
});
