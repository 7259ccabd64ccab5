import { folded } from '../core/drawing/tree-page.ts';
import { bad } from '../core/problem.ts';
import { meant } from '../core/trade/units/nearest.ts';
import { version } from '../core/version.ts';
import { besides, entryOf, everyUse, helpWidth } from './calls.ts';
import { done, type Ended, type Io } from './io.ts';
import { readOptions } from './options.ts';
import { verbs } from './trees/verbs.ts';

/** Where what a command does begins in the list. */
const column = 31;

const row = (head: string, told: string): string =>
  besides(`  droplight ${head}`.trimEnd(), column, told);

/** What a command wants first, without its options: as much as fits before the column. */
const briefly = (use: string): string =>
  use.replace(/ (\[?--|< |\[show |\(TREE |\[COMMAND |\[key).*$/, '');

/** What `droplight help` prints below the name of the program. */
export const usage = (): string =>
  [
    row('', 'the screens; --plain: the same, line by line'),
    ...Object.values(everyUse).map(({ use, does }) => row(briefly(use), firstClause(does))),
    '',
    ...[
      '"droplight help COMMAND" tells its options, with an example; "help all" all of them, "help keys" the keys.',
      'TREE is the id of a tree, or a file. --trees DIR, --sessions DIR and --help work everywhere.',
      'Exit codes: 0 done, 1 found what was looked for, 2 wrong use or bad input, 3 disk or system.',
    ].flatMap((line) => folded(line, helpWidth)),
    '',
  ].join('\n');

/** Every call with all its options, the verbs of `trees` among them: what src/guide/commands.md lists too. */
export const everyCall = (): string =>
  [
    'droplight [--plain]\n    the screens; --plain: the same, line by line, with no escape code\n',
    ...Object.entries(everyUse).flatMap(([name, use]) =>
      name === 'trees' ? Object.values(verbs).map((verb) => entryOf(verb)) : [entryOf(use)],
    ),
  ].join('');

const firstClause = (does: string): string => does.split(';')[0] ?? does;

/** `droplight help [COMMAND | all | keys]`: the commands, one or all with their options, or every key. */
export async function help(io: Io, args: readonly string[]): Promise<Ended> {
  const given = readOptions(args);
  if (given.kind === 'bad') return given;
  const [name, verb] = given.value.words;
  if (name === undefined) {
    io.out(
      `droplight ${version}: from a complaint to a proven repair, kept check by check.\n\n${usage()}`,
    );
    return done;
  }
  if (name === 'all') {
    io.out(everyCall());
    return done;
  }
  if (name === 'keys') {
    const { allKeys } = await import('./keys.ts');
    io.out(allKeys());
    return done;
  }
  if (name === 'trees') {
    const { trees } = await import('./trees/trees.ts');
    return trees(io, ['help', ...(verb === undefined ? [] : [verb])]);
  }
  const use = Object.hasOwn(everyUse, name) ? everyUse[name] : undefined;
  if (use === undefined) return bad(noHelp(name));
  io.out(`${entryOf(use, { example: true })}    --trees DIR and --sessions DIR too.\n`);
  return done;
}

const noHelp = (name: string) => ({
  code: 'unknown-command',
  value: name.slice(0, 40),
  message: `There is no command "${name.slice(0, 40)}".`,
  mend: `${meant(name, [...Object.keys(everyUse), 'all', 'keys'])} See "droplight help".`,
});
