import type { Binding } from './command.ts';

/** Modes of the walk in which something is due. */
export const steps = [
  'look',
  'measure',
  'safeguard',
  'caution',
  'cause-caution',
  'prepare',
  'cause-prepare',
  'condition',
  'named',
  'repair',
  'leg',
  'stop',
  'proven',
] as const;

const checks = ['look', 'measure', 'caution', 'prepare', 'condition'] as const;

/** Keys of the walk. */
export const walkBindings: readonly Binding[] = [
  {
    // Not before the vehicle is set as the check needs it: that nothing could be told says it was.
    modes: ['look', 'measure', 'condition'],
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
  {
    modes: ['safeguard'],
    keys: ['g'],
    command: 'go-past',
    hint: 'go past',
    about: 'go past a safeguard: cautions first, then why, in your own words',
  },
  {
    modes: steps,
    keys: ['i'],
    command: 'full',
    hint: 'in full',
    about: 'steps, cautions, tools and source in full',
  },
  { modes: steps, keys: ['n'], command: 'note', hint: 'note', about: 'type a note' },
  {
    modes: steps,
    keys: ['b'],
    command: 'mend-last',
    hint: 'back',
    about: 'answer the last anew; undo what s said',
  },
  { modes: steps, keys: ['o'], command: 'others', hint: 'other', about: 'choose another check' },
  { modes: steps, keys: ['f'], command: 'ladder', about: 'the feed path, station by station' },
  {
    modes: steps,
    keys: ['w'],
    command: 'why',
    hint: 'why',
    about: 'the suspects, and why this step or a quicker one',
  },
  {
    modes: steps,
    keys: ['j'],
    command: 'quicker',
    about: 'take the quicker step that the advice names',
  },
  {
    modes: steps,
    keys: ['l'],
    command: 'switch-lead',
    about: "lead by the tree's own way or by the quicker one",
  },
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
  {
    modes: steps,
    keys: ['s'],
    command: 'contradiction',
    about: 'say what a finding that got worse comes from',
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
  { modes: steps, keys: ['v'], command: 'figures', about: 'trade figures' },
  {
    modes: [...steps, 'home', 'closed', 'list'],
    keys: ['?'],
    command: 'keys',
    hint: 'keys',
    about: 'this page',
  },
  {
    modes: [...steps, 'closed'],
    keys: ['q', 'esc'],
    command: 'go-back',
    hint: 'leave',
    about: 'put it down; pick it up later',
  },
];
