import { bad } from '../core/problem.ts';
import { nearest } from '../core/trade/units/nearest.ts';
import type { Command } from './io.ts';

type Row = {
  /** How it is called and what it does, as `--help` prints it. */
  readonly help: readonly string[];
  /** Each is loaded when it is called. */
  readonly load: () => Promise<Command>;
};

/** Every command but the screens, by the word that calls it, in the order in which help tells them. */
export const commands: Readonly<Record<string, Row>> = {
  sessions: {
    help: ['sessions             list the sessions'],
    load: async () => (await import('./sessions.ts')).sessions,
  },
  open: {
    help: [
      'open TREE --vehicle TEXT [--who T] [--altitude 5200ft] [--temperature 70F] [--json]',
      '  (--own "WORDS" in place of TREE: a complaint that no tree is about)',
    ],
    load: async () => (await import('./open.ts')).open,
  },
  vehicles: {
    help: [
      'vehicles             what is known of each vehicle [--json]',
      '                     [show NAME | new NAME LINE=TEXT... | edit NAME LINE=TEXT...]',
      '                     [done NAME SESSION N]',
    ],
    load: async () => (await import('./vehicles.ts')).vehicles,
  },
  enter: {
    help: ['enter SESSION        actions as JSON lines on standard input'],
    load: async () => (await import('./enter.ts')).enter,
  },
  story: {
    help: ['story SESSION --json the state of a session'],
    load: async () => (await import('./story.ts')).story,
  },
  write: {
    help: [
      'write SESSION        the account, with pictures [--as md|html|text] [--out DIR]',
      '                     [--length line|short|full] [--voice i|we|they] [--force]',
      '                     [--for shop|reader|mentor] [--front-matter] [--no-pictures]',
    ],
    load: async () => (await import('./write.ts')).write,
  },
  review: {
    help: ['review SESSION...    choices, minutes and habits, as a mentor looks at them [--json]'],
    load: async () => (await import('./review.ts')).review,
  },
  verify: {
    help: [
      'verify SESSION...    whole, line ends changed, torn, cut short, altered or newer',
      '                     [--against LINK: is all that it held then still there?]',
    ],
    load: async () => (await import('./verify.ts')).verify,
  },
  trees: {
    help: [
      'trees list | plan [TREE] | draw TREE   the trees, what they cost, on paper',
      'trees check [FILES] | new [FILE] | shop [WORDS] | schema   write a tree',
      'trees help [VERB]    each of these with its options',
    ],
    load: async () => (await import('./trees/trees.ts')).trees,
  },
  advise: {
    help: ['advise SESSION       the suspects and the quickest next steps [--json]'],
    load: async () => (await import('./advise.ts')).advise,
  },
  feed: {
    help: [
      'feed TREE [--with CAUSE[=OHMS]] [--load NAME]...   the feed path, solved [--json | --netlist]',
    ],
    load: async () => (await import('./feed.ts')).feed,
  },
  figure: {
    help: ['figure [NAME [key=value...]]   trade figures: list, explain, work out'],
    load: async () => (await import('./figure.ts')).figure,
  },
};

const ofScreens = ['start', 'resume', 'replay'];

/** The command that a word calls; one that refuses, where it calls none. */
export async function commandNamed(name: string): Promise<Command> {
  const row = Object.hasOwn(commands, name) ? commands[name] : undefined;
  return row === undefined ? unknown(name) : row.load();
}

const unknown =
  (name: string): Command =>
  async () => {
    const near = nearest(name, [...ofScreens, ...Object.keys(commands)]);
    const instead = near.length === 0 ? '' : `Did you mean ${near.join(' or ')}? `;
    return bad({
      code: 'unknown-command',
      value: name.slice(0, 40),
      message: `There is no command "${name.slice(0, 40)}".`,
      mend: `${instead}See "droplight --help".`,
    });
  };

/** The rows of `--help`; a line that begins with a space goes on with the one before. */
const shown = (help: readonly string[]): readonly string[] =>
  help.map((line) => `${line.startsWith(' ') ? ' '.repeat(12) : '  droplight '}${line}`);

/** How one command is used, as `droplight COMMAND --help` prints it; the whole list for a screen. */
export function helpOf(name: string): string {
  const row = Object.hasOwn(commands, name) ? commands[name] : undefined;
  return row === undefined ? usage() : `${shown(row.help).join('\n')}\n`;
}

/** What `--help` prints below the name of the program. */
export const usage = (): string =>
  [
    '  droplight                      the screens',
    ...shown([
      'start [TREE]         a new job on the screens',
      'resume [SESSION]     pick a session up (the newest, if none is named)',
      'replay SESSION       watch a session again',
    ]),
    ...Object.values(commands).flatMap(({ help }) => shown(help)),
    '',
    'TREE is the id of a tree, or a file. --trees DIR, --sessions DIR and --help work everywhere.',
    'Exit codes: 0 done, 1 found what was looked for, 2 wrong use or bad input, 3 disk or system.',
    '',
  ].join('\n');
