import type { Binding } from './command.ts';
import { steps } from './walk.ts';

/** Keys that only practice on a hidden fault has. */
export const practiceBindings: readonly Binding[] = [
  {
    modes: ['make'],
    keys: ['y'],
    command: 'make',
    hint: 'make it',
    about: 'practice: make the check on screen; the hidden vehicle answers',
  },
  {
    modes: ['make'],
    keys: ['A'],
    command: 'hint',
    hint: 'hint (5 min)',
    about: 'practice: what the advice knows, until the next answer; it costs 5 minutes',
  },
  {
    modes: ['answered'],
    keys: ['enter', 'y'],
    command: 'choose',
    hint: 'go on',
    about: 'the answer was read: on with the walk',
  },
];

/** A hint can be asked for on every step; its key is told last where it is not the usual one. */
export const hintElsewhere: Binding = {
  modes: steps.filter((mode) => mode !== 'make'),
  keys: ['A'],
  command: 'hint',
  about: 'practice: what the advice knows, until the next answer; it costs 5 minutes',
};
