import { expect, test } from 'vitest';
import { HomeBody } from '../../src/screens/home.tsx';
import { renderToString } from 'ink';

const home = (unsafe: readonly string[], rows: number) =>
  renderToString(<HomeBody sessions={[]} unsafe={unsafe} cursor={0} rows={rows} />, {
    columns: 80,
  });

test('what must be done before a vehicle is driven stands first, and all choices stay in sight', () => {
  const frame = home(['Orchard van: brake hose cracked'], 14);

  expect(frame.indexOf('! Before it is driven: Orchard van: brake hose cracked')).toBeGreaterThan(
    -1,
  );
  expect(frame.indexOf('brake hose')).toBeLessThan(frame.indexOf('Start a new job'));
  expect(frame).toContain('Quit');
});

test('of many, three are told and the others counted', () => {
  const frame = home(['a: one', 'a: two', 'a: three', 'a: four', 'a: five'], 14);

  expect(frame).toContain('a: three');
  expect(frame).not.toContain('a: four');
  expect(frame).toContain('and 2 more');
});
