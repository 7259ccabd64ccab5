import { expect, test } from 'vitest';
import type { Action } from '../../src/core/session/action.ts';
import { currentLeg } from '../../src/core/session/story.ts';
import { checkTitle, isAfterRepair } from '../../src/screens/claim-rows.ts';
import { after } from '../helpers/story.ts';

const found: readonly Action[] = [
  { do: 'find', check: 'lamp', result: 'dark' },
  { do: 'find', check: 'look', result: 'whole' },
];
const bad: Action = { do: 'find', check: 'volts', reading: '1' };
const mended: Action = { do: 'repair', cause: 'wire', acknowledged: true };

test('a check that is repeated after a repair says so in its title, and no other does', () => {
  const title = (actions: readonly Action[]) => {
    const { story } = after([...actions]);
    const check = currentLeg(story).tree.checks['volts'];
    if (check === undefined) throw new Error('the tree has no such check');
    return [isAfterRepair(story), checkTitle(story, { id: 'volts', check, purpose: 'check' })];
  };

  expect(title([...found, bad, mended])).toEqual([true, 'AFTER THE REPAIR: Volts at the lamp']);
  expect(title(found)).toEqual([false, 'Volts at the lamp']);
});
