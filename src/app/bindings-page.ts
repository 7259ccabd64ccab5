import type { Binding } from './binding.ts';

/** Keys of Home, of lists and of pages. */
export const pageBindings: readonly Binding[] = [
  { modes: 'all', keys: ['up'], command: 'up', about: 'line up' },
  { modes: 'all', keys: ['down', 'tab'], command: 'down', about: 'line down' },
  { modes: ['home'], keys: ['s'], command: 'start', hint: 'start', about: 'start a new job' },
  { modes: ['home'], keys: ['l'], command: 'read', hint: 'list', about: 'list all sessions' },
  {
    modes: ['home'],
    keys: ['f'],
    command: 'figures',
    hint: 'figures',
    about: 'trade figures',
  },
  {
    modes: ['worked'],
    keys: ['k'],
    command: 'keep',
    hint: 'keep it',
    about: 'keep the result in the session',
  },
  {
    modes: ['worked'],
    keys: ['enter'],
    command: 'choose',
    hint: 'again',
    about: 'change the inputs',
  },
  { modes: ['home'], keys: ['g'], command: 'settings', hint: 'settings', about: 'settings' },
  {
    modes: ['list', 'form-choice', 'form-text', 'settings', 'keys', 'apart', 'worked'],
    keys: ['esc', 'left'],
    command: 'go-back',
    hint: 'back',
    about: 'back',
  },
  {
    modes: ['list', 'form-choice', 'settings', 'keys', 'apart', 'worked'],
    keys: ['b', 'back'],
    command: 'go-back',
    about: 'back',
  },
  {
    modes: ['home'],
    keys: ['q', 'esc'],
    command: 'quit',
    hint: 'quit',
    about: 'leave the program',
  },
];
