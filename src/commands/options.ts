import { isAbsolute, join, resolve } from 'node:path';
import { parseArgs } from 'node:util';
import { bad, good, type Parsed, type Problem } from '../core/problem.ts';
import { didYouMean } from '../core/trade/units/nearest.ts';
import { readSettings } from '../store/settings.ts';
import { wholePath } from '../store/folder.ts';
import type { Io } from './io.ts';

/** `texts` may be given several times. */
export type Wanted = Readonly<Record<string, 'text' | 'texts' | 'flag'>>;

export type Given = {
  readonly words: readonly string[];
  readonly text: (name: string) => string | undefined;
  readonly texts: (name: string) => readonly string[];
  readonly flag: (name: string) => boolean;
};

/** Options of every command. */
export const everywhere: Wanted = { trees: 'text', sessions: 'text' };

/** Reads the words and options of a command; `--trees DIR` and `--sessions DIR` work everywhere. */
export function readOptions(args: readonly string[], wanted: Wanted = {}): Parsed<Given> {
  const all = { ...everywhere, ...wanted };
  try {
    const { values, positionals, tokens } = parseArgs({
      args: joinNegatives(args, all),
      allowPositionals: true,
      tokens: true,
      options: Object.fromEntries(
        Object.entries(all).map(([name, kind]) => [
          name,
          kind === 'flag'
            ? { type: 'boolean' as const }
            : { type: 'string' as const, multiple: kind === 'texts' },
        ]),
      ),
    });
    const given = tokens.flatMap((token) => (token.kind === 'option' ? [token.name] : []));
    const twice = given.find((name, at) => all[name] === 'text' && given.indexOf(name) < at);
    if (twice !== undefined) return bad(optionTwice(twice));
    return good({
      words: positionals,
      text: (name) => (typeof values[name] === 'string' ? values[name] : undefined),
      texts: (name) => {
        const found = values[name];
        return Array.isArray(found) ? found.filter((one) => typeof one === 'string') : [];
      },
      flag: (name) => values[name] === true,
    });
  } catch (error) {
    return bad(wrongOption(error instanceof Error ? error.message : String(error), all));
  }
}

/** What is wrong with an option, in the words of the parser, and the one that was meant. */
function wrongOption(said: string, wanted: Wanted): Problem {
  const [message = ''] = said.split('. ');
  const names = Object.keys(wanted).map((name) => `--${name}`);
  const [, typed] = /Unknown option '(-[^']*)'/.exec(message) ?? [];
  const instead = typed === undefined ? '' : didYouMean(typed, names);
  return {
    code: 'wrong-option',
    message: `${message.replace(/\.$/, '')}.`,
    mend: `${instead}Options here: ${names.join(', ')}.`,
  };
}

const optionTwice = (name: string): Problem => ({
  code: 'option-twice',
  message: `--${name} is given twice.`,
  mend: 'Keep one of the two.',
});

/** Joins `--temperature -5C`: what looks like a number below zero is the option's value, no option. */
const joinNegatives = (args: readonly string[], wanted: Wanted): string[] => {
  const takesText = (arg: string): boolean =>
    arg.startsWith('--') && ['text', 'texts'].includes(wanted[arg.slice(2)] ?? '');
  return args.flatMap((arg, at) => {
    const [before = '', next = ''] = [args[at - 1], args[at + 1]];
    if (takesText(arg) && negative.test(next)) return [`${arg}=${next}`];
    return takesText(before) && negative.test(arg) ? [] : [arg];
  });
};

const negative = /^[-\u2212][.\d½¼¾]/;

/** A command that was called otherwise than it can be. */
export const wrongUse = (message: string, use: string, meant = ''): Parsed<never> =>
  bad({ code: 'wrong-use', message, mend: `${meant}Use: ${use}` });

export const treesFolder = (io: Io, given: Given): string =>
  absolute(io, given.text('trees') ?? io.folders.shipped);

/** The path of a tree that was named by its file; undefined for a word that is an id. */
export const fileNamed = (io: Io, word: string): string | undefined =>
  /\.json$|[/\\]/i.test(word) ? absolute(io, word) : undefined;

export const noTrees = (folder: string): Problem => ({
  code: 'no-trees',
  value: folder,
  message: `There is no folder of trees at ${folder}.`,
  mend: 'Give --trees DIR with a folder that is there.',
});

/** Where sessions are: `--sessions`, else the settings, else where they usually are. */
export function sessionsFolder(io: Io, given: Given): string {
  const named = given.text('sessions');
  if (named !== undefined) return absolute(io, named);
  const { sessions } = readSettings(io.disk.files, io.folders.settings);
  return sessions === '' ? io.folders.sessions : wholePath(sessions, io.folders);
}

export const absolute = (io: Io, path: string): string =>
  isAbsolute(path) ? path : resolve(join(io.folders.current, path));
