import type { Binding, Command, Mode } from './command.ts';
import type { Token } from './tokens.ts';

/** Modes of the walk in which its page claims something. */
const claimModes = [
  'safeguard',
  'before-proof',
  'caution',
  'cause-caution',
  'prepare',
  'cause-prepare',
  'named',
  'repair',
] as const;

/** Modes in which letters are typed. */
export const fieldModes = ['reading', 'text', 'form-text', 'photo'] as const;
export const isField = (mode: Mode): boolean => fieldModes.some((one) => one === mode);

/** Modes in which letters narrow a list. */
export const narrows = (mode: Mode): boolean => mode === 'search' || mode === 'form-choice';

/** A field edits like the line of a shell. */
const editing: readonly (readonly [keys: readonly Token[], command: Command, about: string])[] = [
  [['left', 'C-b'], 'letter-back', 'a letter back'],
  [['right', 'C-f'], 'letter-on', 'a letter on'],
  [['C-left'], 'word-back', 'a word back'],
  [['C-right'], 'word-on', 'a word on'],
  [['home', 'C-a'], 'to-start', 'to the beginning'],
  [['end', 'C-e'], 'to-end', 'to the end'],
  [['delete', 'C-d'], 'erase-ahead', 'take away the letter behind the cursor'],
  [['C-w'], 'erase-word', 'take away the word before the cursor'],
  [['C-u'], 'erase-to-start', 'take away all before the cursor'],
  [['C-k'], 'erase-to-end', 'take away all behind the cursor'],
];

/** Keys that answer, pick and type. They come first: a letter typed into a field is a letter. */
export const fieldBindings: readonly Binding[] = [
  { modes: 'all', keys: ['C-c'], command: 'quit', about: 'leave; everything is kept' },
  { modes: 'all', keys: ['C-l'], command: 'redraw', about: 'draw the screen again' },
  {
    modes: ['look', 'home', 'settings', 'vehicle', 'list', 'worker', 'search', 'form-choice'],
    keys: ['digit'],
    command: 'pick-line',
    about: 'pick by number',
  },
  {
    modes: ['search', 'form-choice'],
    keys: ['letter'],
    command: 'type',
    hint: 'narrow',
    about: 'show only the lines that have these letters',
  },
  {
    modes: ['search', 'form-choice'],
    keys: ['back'],
    command: 'erase',
    about: 'take the last of these letters away',
  },
  {
    modes: ['measure'],
    keys: ['digit', '-', '+', '.', ',', 'O'],
    command: 'type',
    about: 'type the reading, or several; O begins OL, Open, Over',
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
    modes: ['caution', 'cause-caution'],
    keys: ['digit'],
    command: 'pick-line',
    hint: 'its number: read',
    about: 'the caution of that number was read',
  },
  {
    modes: ['condition'],
    keys: ['enter'],
    command: 'choose',
    hint: 'type it',
    about: 'type the condition that the reading is judged by',
  },
  {
    modes: claimModes,
    keys: [' ', 'down', 'pgdn'],
    command: 'read-on',
    about: 'the next page, where it takes more than one',
  },
  { modes: claimModes, keys: ['up', 'pgup'], command: 'read-back', about: 'the page before' },
  {
    modes: ['safeguard'],
    keys: ['y'],
    command: 'confirm',
    hint: 'make it',
    about: 'make the check that comes first',
  },
  {
    modes: ['prepare', 'cause-prepare'],
    keys: ['y'],
    command: 'confirm',
    hint: 'done',
    about: 'the vehicle is set so',
  },
  {
    modes: ['named'],
    keys: ['y'],
    command: 'confirm',
    hint: 'this is it',
    about: 'name this cause as found',
  },
  {
    modes: ['repair'],
    keys: ['y'],
    command: 'confirm',
    hint: 'repaired',
    about: 'the repair is done',
  },
  {
    modes: ['leg'],
    keys: ['y'],
    command: 'confirm',
    hint: 'go there',
    about: 'go on with the other tree',
  },
  {
    modes: ['proven', 'stop'],
    keys: ['c'],
    command: 'close',
    hint: 'close',
    about: 'end the session',
  },
  {
    modes: ['home', 'list', 'worker', 'search', 'form-choice', 'settings'],
    keys: ['enter'],
    command: 'choose',
    hint: 'choose',
    about: 'take the line marked >',
  },
  {
    modes: ['form-text', 'photo'],
    keys: ['enter'],
    command: 'choose',
    hint: 'next',
    about: 'go on to what is asked next',
  },
  {
    modes: ['apart', 'before-proof'],
    keys: ['y'],
    command: 'confirm',
    hint: 'done',
    about: 'what the marked line claims: the part is on again, the access closed, the aid off',
  },
  {
    modes: ['apart'],
    keys: ['r'],
    command: 'turn-board',
    hint: 'turn it round',
    about: 'turn the board round: as it came off, or as it goes back',
  },
  {
    modes: ['apart', 'close', 'before-proof'],
    keys: ['digit'],
    command: 'pick-line',
    about: 'mark a line by its number',
  },
  {
    modes: ['history'],
    keys: ['y'],
    command: 'confirm',
    hint: 'take back',
    about: 'take back what the marked line tells',
  },
  {
    modes: ['history'],
    keys: ['a'],
    command: 'answer-anew',
    hint: 'answer anew',
    about: 'answer the marked check anew',
  },
  { modes: ['history'], keys: ['pgdn', ' '], command: 'read-on', about: 'ten lines on' },
  { modes: ['history'], keys: ['pgup'], command: 'read-back', about: 'ten lines back' },
  { modes: ['close'], keys: [' ', 'pgdn'], command: 'read-on', about: 'the next page' },
  { modes: ['close'], keys: ['pgup'], command: 'read-back', about: 'the page before' },
  {
    modes: ['reopen'],
    keys: ['y'],
    command: 'confirm',
    hint: 'open it again',
    about: 'the closed job is worked on again',
  },
  {
    modes: ['close'],
    keys: ['y'],
    command: 'confirm',
    hint: 'close it so',
    about: 'the session ends as the line marked says',
  },
  {
    modes: [...fieldModes, 'insist'],
    keys: ['back', 'C-h'],
    command: 'erase',
    about: 'take away the letter before the cursor',
  },
  ...editing.map(([keys, command, about]) => ({ modes: fieldModes, keys, command, about })),
  { modes: ['asked'], keys: ['y'], command: 'confirm', hint: 'yes', about: 'it counts' },
  {
    modes: ['asked'],
    keys: ['esc', 'enter'],
    command: 'leave-field',
    hint: 'no',
    about: 'it does not count; a field is typed on',
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
  { modes: fieldModes, keys: ['typed'], command: 'type', about: 'type' },
];
