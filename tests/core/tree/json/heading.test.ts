import { expect, test } from 'vitest';
import { headingOf } from '../../../../src/core/tree/json/heading.ts';

const heading = { id: 'no-light', title: 'No light at all' };

test.each([
  ['the whole text', '{"id":"no-light","title":"No light at all"}'],
  ['the title first', '{"title":"No light at all", "format":1, "id":"no-light"}'],
  ['a text cut off behind them', '{"id":"no-light","title":"No light at all","causes":{"a":{"na'],
  [
    "names below, which are not the tree's",
    '{"a":{"id":"x","title":"y"},"b":["id","title"],"id":"no-light","title":"No light at all"}',
  ],
  [
    'quotes and brackets in a text before',
    String.raw`{"say":"\"id\": {[","id":"no-light","title":"No light at all"}`,
  ],
  ['escapes', String.raw`{"id":"no\u002dlight","title":"No light at all"}`],
])('is read from %s', (_, text) => {
  expect(headingOf(text)).toEqual(heading);
});

test.each([
  ['nothing', ''],
  ['no title', '{"id":"no-light"}'],
  ['a title cut off', '{"id":"no-light","title":"No li'],
  ['an id that is no text', '{"id":5,"title":"No light at all"}'],
  ['names only below', '{"tree":{"id":"x","title":"y"}}'],
  ['a list', '["id","x","title","y"]'],
])('is not found in %s', (_, text) => {
  expect(headingOf(text)).toBeUndefined();
});
