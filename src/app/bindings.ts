import type { Mode } from './asking.ts';
import type { Command } from './command.ts';
import type { Token } from './tokens.ts';

export type Binding = {
  readonly modes: readonly Mode[] | 'all';
  /** A token, `digit` for any of 1 to 9, or `typed` for any character. */
  readonly keys: readonly Token[];
  readonly command: Command;
  /** Shown in the foot line when given: short, and what it does rather than what it is called. */
  readonly hint?: string;
  /** Longer words for the page of keys. */
  readonly about: string;
};

const steps = [
  'look',
  'measure',
  'caution',
  'prepare',
  'condition',
  'named',
  'repair',
  'leg',
  'stop',
  'proven',
] as const;
const checks = ['look', 'measure', 'caution', 'prepare', 'condition'] as const;

/** All keys, in the order in which the foot line shows them. The first that fits counts. */
export const bindings: readonly Binding[] = [
  { modes: 'all', keys: ['C-c'], command: 'quit', about: 'leave; everything is kept' },
  { modes: 'all', keys: ['C-l'], command: 'redraw', about: 'draw the screen again' },
  {
    modes: ['look', 'list', 'form-choice', 'home', 'settings'],
    keys: ['digit'],
    command: 'pick-digit',
    about: 'pick by number',
  },
  {
    modes: ['measure'],
    keys: ['digit', '-', '+', '.', ','],
    command: 'type',
    about: 'type the reading',
  },
  {
    modes: ['look', 'measure', 'reading', 'text'],
    keys: ['enter'],
    command: 'choose',
    hint: 'keep',
    about: 'keep the answer',
  },
  {
    modes: ['insist'],
    keys: ['!'],
    command: 'choose',
    hint: 'it is really so',
    about: 'keep an unlikely reading',
  },
  {
    modes: ['caution'],
    keys: ['enter'],
    command: 'choose',
    hint: 'I have read this',
    about: 'the cautions were read',
  },
  {
    modes: ['condition'],
    keys: ['enter'],
    command: 'choose',
    hint: 'type it',
    about: 'type the condition that the reading is judged by',
  },
  {
    modes: ['prepare'],
    keys: ['enter'],
    command: 'choose',
    hint: 'done',
    about: 'the vehicle is set so',
  },
  {
    modes: ['named'],
    keys: ['enter'],
    command: 'choose',
    hint: 'condemn it',
    about: 'name this cause as found',
  },
  {
    modes: ['repair'],
    keys: ['enter'],
    command: 'choose',
    hint: 'repaired',
    about: 'the repair is done',
  },
  {
    modes: ['leg'],
    keys: ['enter'],
    command: 'choose',
    hint: 'go there',
    about: 'go on with the other tree',
  },
  {
    modes: ['proven', 'stop'],
    keys: ['c', 'enter'],
    command: 'close',
    hint: 'close',
    about: 'end the session',
  },
  {
    modes: ['home', 'list', 'form-choice', 'form-text', 'settings'],
    keys: ['enter'],
    command: 'choose',
    hint: 'choose',
    about: 'take the line marked >',
  },
  {
    modes: ['apart'],
    keys: ['enter'],
    command: 'choose',
    hint: 'back on / closed',
    about: 'the part is on again, the access closed',
  },
  {
    modes: ['reading', 'text', 'form-text', 'insist'],
    keys: ['back'],
    command: 'erase',
    about: 'take the last character away',
  },
  {
    modes: ['insist'],
    keys: ['esc', 'enter'],
    command: 'leave-field',
    hint: 'read again',
    about: 'take the reading again',
  },
  {
    modes: ['reading', 'text'],
    keys: ['esc'],
    command: 'leave-field',
    hint: 'leave',
    about: 'leave without keeping',
  },
  { modes: ['reading', 'text', 'form-text'], keys: ['typed'], command: 'type', about: 'type' },
  { modes: 'all', keys: ['up'], command: 'up', about: 'line up' },
  { modes: 'all', keys: ['down', 'tab'], command: 'down', about: 'line down' },
  {
    modes: checks,
    keys: ['u'],
    command: 'unsure',
    hint: 'unsure',
    about: 'cannot tell: kept, but no evidence',
  },
  {
    modes: checks,
    keys: ['x'],
    command: 'skip',
    hint: "can't",
    about: 'cannot get to it: passed over with a reason',
  },
  { modes: steps, keys: ['n'], command: 'note', hint: 'note', about: 'type a note' },
  {
    modes: steps,
    keys: ['b', 'left', 'back'],
    command: 'mend-last',
    hint: 'back',
    about: 'answer the last check anew',
  },
  { modes: steps, keys: ['o'], command: 'others', hint: 'other', about: 'choose another check' },
  {
    modes: steps,
    keys: ['r'],
    command: 'suspects',
    hint: 'repair',
    about: 'choose a cause to repair',
  },
  {
    modes: steps,
    keys: ['p'],
    command: 'part-off',
    hint: 'part off',
    about: 'note a part taken off',
  },
  {
    modes: steps,
    keys: ['i'],
    command: 'full',
    hint: 'in full',
    about: 'steps, cautions, tools and source in full',
  },
  {
    modes: [...steps, 'closed'],
    keys: ['a'],
    command: 'apart',
    hint: 'apart',
    about: 'what is off and open now',
  },
  {
    modes: [...steps, 'closed'],
    keys: ['d'],
    command: 'to-do',
    about: 'note something still to do',
  },
  { modes: steps, keys: ['t'], command: 'conditions', about: 'altitude and air temperature' },
  { modes: steps, keys: ['c'], command: 'close', about: 'end the session' },
  { modes: ['closed'], keys: ['n'], command: 'note', hint: 'note', about: 'type a note' },
  {
    modes: ['proven', 'closed', 'stop'],
    keys: ['e'],
    command: 'account',
    hint: 'account',
    about: 'write the account',
  },
  { modes: ['home'], keys: ['s'], command: 'start', hint: 'start', about: 'start a new job' },
  { modes: ['home'], keys: ['l'], command: 'read', hint: 'list', about: 'list all sessions' },
  { modes: ['home'], keys: ['g'], command: 'settings', hint: 'settings', about: 'settings' },
  {
    modes: [...steps, 'home', 'closed', 'list'],
    keys: ['?'],
    command: 'keys',
    hint: 'keys',
    about: 'this page',
  },
  {
    modes: ['list', 'form-choice', 'form-text', 'settings', 'keys', 'apart'],
    keys: ['esc', 'left'],
    command: 'go-back',
    hint: 'back',
    about: 'back',
  },
  {
    modes: ['list', 'form-choice', 'settings', 'keys', 'apart'],
    keys: ['b', 'back'],
    command: 'go-back',
    about: 'back',
  },
  {
    modes: [...steps, 'closed'],
    keys: ['q', 'esc'],
    command: 'go-back',
    hint: 'leave',
    about: 'put it down; pick it up later',
  },
  {
    modes: ['home'],
    keys: ['q', 'esc'],
    command: 'quit',
    hint: 'quit',
    about: 'leave the program',
  },
];
