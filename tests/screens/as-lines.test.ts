import stringWidth from 'string-width';
import { expect, test } from 'vitest';
import { bodyLines } from '../../src/screens/plain/as-lines.tsx';
import { everyScreen } from '../helpers/every-screen.ts';

test.each(everyScreen.map(({ name, reach }) => [name, reach] as const))(
  '%s is told whole: no line too wide, none cut, no control byte',
  (_, reach) => {
    const state = reach().state();

    for (const columns of [40, 60, 80]) {
      const lines = bodyLines(state, columns);

      expect(lines.filter((line) => stringWidth(line) > columns)).toEqual([]);
      // oxlint-disable-next-line no-control-regex -- control bytes are what must not be there
      expect(lines.join('')).not.toMatch(/[\0-\x1f\x7f-\x9f]/);
      expect(lines.join('').length).toBeGreaterThan(0);
    }
    const [narrow = '', wide = ''] = [40, 200].map((columns) => words(bodyLines(state, columns)));
    expect(narrow).toBe(wide);
  },
);

/** What is said, however it is folded. */
const words = (lines: readonly string[]): string => lines.join('').replace(/\s/g, '');
