import { bad } from '../../core/problem.ts';
import { meant } from '../../core/trade/units/nearest.ts';
import { asksHelp, done, type Ended, type Io } from '../io.ts';
import { entryOf } from '../calls.ts';
import { readOptions, type Wanted } from '../options.ts';
import { verbs, type VerbRow } from './verbs.ts';

const everyOption: Wanted = Object.assign(
  {},
  ...Object.values(verbs).map(({ options }) => options),
);

const verbNamed = (name: string): VerbRow | undefined =>
  Object.hasOwn(verbs, name) ? verbs[name] : undefined;

/** The verb that these words begin with, whatever stands between. */
const verbAmong = (words: readonly string[]): VerbRow | undefined =>
  words.map(verbNamed).find((one) => one !== undefined);

/** `droplight trees VERB`: what there is in the library, what it is worth, and how to add to it. */
export async function trees(io: Io, args: readonly string[]): Promise<Ended> {
  if (asksHelp(args)) return help(io, args);
  const given = readOptions(args, everyOption);
  if (given.kind === 'bad') {
    const own = readOptions(args, verbAmong(args)?.options);
    return own.kind === 'bad' ? own : given;
  }
  const [name = 'list', ...words] = given.value.words;
  if (name === 'help') return help(io, words);
  const row = verbNamed(name);
  if (row === undefined)
    return bad({
      code: 'unknown-verb',
      value: name,
      message: `"trees ${name}" is not known.`,
      mend: `${meant(name, Object.keys(verbs))} "droplight trees help" tells of each.`,
    });
  const own = readOptions(args, row.options);
  if (own.kind === 'bad') return own;
  return (await row.load())(io, own.value, words);
}

/** How the verb among these words is used; all of them where there is none. */
function help(io: Io, words: readonly string[]): Ended {
  const row = verbAmong(words);
  io.out(row === undefined ? allHelp() : entryOf(row, { example: true }));
  return done;
}

const allHelp = (): string =>
  [
    ...Object.values(verbs).map((row) => entryOf(row)),
    'TREE is the id of a tree in the library, or a file: my-complaint.json\n',
    '--trees DIR takes the trees of another folder.\n',
    'trees/README.md says how to write one.\n',
  ].join('');
