import { expect, test } from 'vitest';
import { parseNext } from '../../../../src/core/tree/way/next.ts';

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
