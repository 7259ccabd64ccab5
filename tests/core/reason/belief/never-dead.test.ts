import { expect, test } from 'vitest';
import { quickAdvice } from '../../../../src/core/reason/advice/advise.ts';
import { believe } from '../../../../src/core/reason/belief/posterior.ts';
import { inputFrom } from '../../../../src/core/reason/history/from-story.ts';
import type { Action } from '../../../../src/core/session/action.ts';
import { shippedShop, shippedTree } from '../../../helpers/library.ts';
import { after, headerFor } from '../../../helpers/story.ts';

const found = (check: string, result: string): Action => ({ do: 'find', check, result });
const read = (check: string, reading: string): Action => ({ do: 'find', check, reading });
const repair = (cause: string): Action => ({ do: 'repair', cause });
const prove = (result: string): Action => ({ do: 'prove', result });

/*
 * Each of these is impossible in the model: a fault that is there shows the same each time, and a
 * repair makes nothing worse. Mechanics find it all the same.
 */
const sessions: readonly (readonly [string, string, readonly Action[]])[] = [
  [
    'a battery sagged over a limit in an afternoon',
    'no-supply',
    [
      read('bat-rest-volts', '12.65'),
      repair('relay-stud'),
      prove('dead'),
      read('bat-rest-volts', '12.1'),
    ],
  ],
  [
    'the complaint itself got worse over a repair',
    'rough-idle',
    [found('idle-check', 'hunts'), repair('idle-mix'), prove('shakes')],
  ],
  [
    'the complaint showed with everything dead after a repair',
    'no-supply',
    [found('lamps-horn', 'horn-only'), repair('relay-stud'), prove('dead')],
  ],
  [
    'a reading fell over its limit after a repair',
    'rough-idle',
    [
      found('idle-check', 'hunts'),
      read('vac-level', '17.9'),
      repair('idle-mix'),
      prove('hunts'),
      read('vac-level', '15'),
    ],
  ],
];

test.each(sessions)('there is a belief and a next step where %s', (_, tree, actions) => {
  const header = headerFor(shippedTree(tree), shippedShop());
  const made = inputFrom(after(actions, header).story);
  if (made.kind === 'bad') throw new Error(JSON.stringify(made.problems));

  const belief = believe(made.value);
  const advice = quickAdvice(made.value);

  expect(made.value.setAside.length).toBeGreaterThan(0);
  expect(belief.kind === 'good' && Math.max(...belief.value.chances)).toBeGreaterThan(0.05);
  expect(advice.kind === 'good' && advice.value.next.length).toBeGreaterThan(0);
});
