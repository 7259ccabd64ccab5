import { expect, test } from 'vitest';
import { meantPaths } from '../../src/store/dropped-path.ts';

test.each<[typed: string, meant: readonly string[]]>([
  ['a.png', ['a.png']],
  [String.raw`it\'s.png`, [String.raw`it\'s.png`, "it's.png"]],
  [`"a b.png"`, [`"a b.png"`, 'a b.png']],
  // The backslashes of a path on Windows part its folders.
  [String.raw`C:\photos\a.png`, [String.raw`C:\photos\a.png`]],
  [String.raw`\\share\a.png`, [String.raw`\\share\a.png`]],
  ['file:///C:/photos/a.png', ['file:///C:/photos/a.png', 'C:/photos/a.png']],
  ['file:///a%2.png', ['file:///a%2.png']],
  ['  ', []],
])('%j may mean %j', (typed, meant) => {
  expect(meantPaths(typed)).toEqual(meant);
});
