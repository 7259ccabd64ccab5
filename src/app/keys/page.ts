import type { Binding } from './command.ts';

/** Pages to read. */
export const readings = ['jobs', 'full', 'why', 'ladder'] as const;

const longLists = [
  'home',
  'list',
  'worker',
  'search',
  'form-choice',
  'settings',
  'keys',
  'vehicle',
  ...readings,
] as const;

/** Screens that are left back to where they were opened, and on which no letter is typed. */
const leftBack = [
  'list',
  'worker',
  'settings',
  'keys',
  ...readings,
  'answered',
  'apart',
  'close',
  'reopen',
  'history',
  'worked',
  'vehicle',
  'timers',
] as const;

/** Keys of Home, of lists and of pages. */
export const pageBindings: readonly Binding[] = [
  {
    modes: ['keys', ...readings],
    keys: ['down', ' '],
    command: 'down',
    hint: 'more',
    about: 'read on',
  },
  { modes: 'all', keys: ['up'], command: 'up', about: 'line up' },
  { modes: 'all', keys: ['down', 'tab'], command: 'down', about: 'line down' },
  { modes: longLists, keys: ['pgup'], command: 'page-up', about: 'nine lines up' },
  { modes: longLists, keys: ['pgdn'], command: 'page-down', about: 'nine lines down' },
  { modes: longLists, keys: ['home'], command: 'first-line', about: 'the first line' },
  { modes: longLists, keys: ['end'], command: 'last-line', about: 'the last line' },
  { modes: ['home'], keys: ['s'], command: 'start', hint: 'start', about: 'start a new job' },
  { modes: ['home'], keys: ['a'], command: 'sessions', hint: 'all', about: 'list all sessions' },
  { modes: ['home'], keys: ['v'], command: 'vehicles', hint: 'vehicles', about: 'the vehicles' },
  {
    modes: ['home'],
    keys: ['p'],
    command: 'jobs',
    hint: 'past jobs',
    about: 'what past jobs turned out to be',
  },
  {
    modes: ['home'],
    keys: ['f'],
    command: 'figures',
    hint: 'figures',
    about: 'trade figures',
  },
  { modes: ['home'], keys: ['g'], command: 'settings', hint: 'settings', about: 'settings' },
  {
    modes: ['search', 'form-choice', ...leftBack],
    keys: ['esc', 'left'],
    command: 'go-back',
    hint: 'back',
    about: 'back',
  },
  { modes: ['form-text', 'photo'], keys: ['esc'], command: 'go-back', hint: 'back', about: 'back' },
  {
    modes: leftBack,
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
