import { expect, test } from 'vitest';
import type { Problem } from '../../../../src/core/problem.ts';
import { placed } from '../../../../src/core/tree/json/place.ts';

const text = `{
  "start": "a", // why
  "checks": {
    "a": { "minutes": 1,
      "results": [{ "id": "x" }, { "id": "y" }] },
    "a.b": { "minutes": 2 }
  }
}`;

test.each([
  ['start', '2:3'],
  ['checks.a.minutes', '4:12'],
  ['checks.a.results[1]', '5:34'],
  ['checks.a.results[1].id', '5:36'],
  ['checks.a.b.minutes', '6:14'],
  // Not there: the nearest place around it that is.
  ['checks.a.ask', '4:5'],
  ['checks.a.results[7].id', '5:7'],
  ['checks.c', '3:3'],
  ['causes', '1:1'],
  ['', '1:1'],
])('the path "%s" has its place', (path, place) => {
  const problem: Problem = { code: 'x', path, message: 'x', mend: 'x' };
  const [found] = placed(text, [problem]);

  expect(`${found?.line}:${found?.column}`).toBe(place);
});

test('a problem that has its place, or names none, keeps what it has', () => {
  const problems = [
    { code: 'x', path: 'start', line: 7, message: 'x', mend: 'x' },
    { code: 'y', message: 'y', mend: 'y' },
  ];

  expect(placed(text, problems)).toEqual(problems);
});
