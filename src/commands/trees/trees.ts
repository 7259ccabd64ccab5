import { bad } from '../../core/problem.ts';
import { meant } from '../../core/trade/units/nearest.ts';
import { asksHelp, done, type Ended, type Io } from '../io.ts';
import { readOptions, type Given, type Wanted } from '../options.ts';

type Verb = (io: Io, given: Given, words: readonly string[]) => Ended | Promise<Ended>;

type Row = {
  /** How it is called, after `droplight trees`. */
  readonly use: string;
  readonly does: string;
  readonly options: Wanted;
  /** Each verb is loaded when it is called: a list of names needs no reasoning. */
  readonly load: () => Promise<Verb>;
};

const verbs: Readonly<Record<string, Row>> = {
  list: {
    use: 'list [--json]',
    does: 'the trees by name',
    options: { json: 'flag' },
    load: async () => (await import('./list.ts')).listTrees,
  },
  new: {
    use: 'new [FILE]',
    does: 'a tree to begin with, beside the others; printed where no file is named',
    options: {},
    load: async () => (await import('./new.ts')).newTree,
  },
  from: {
    use: 'from SESSION',
    does: 'a job without a tree as a tree to finish; its numbers are left to fill',
    options: {},
    load: async () => (await import('./from.ts')).treeFrom,
  },
  write: {
    use: 'write [FILE]',
    does: 'asks its way to a tree, a line an answer; each is kept, to go on later',
    options: {},
    load: async () => (await import('./write.ts')).writeTree,
  },
  shop: {
    use: 'shop [WORDS] [--json]',
    does: 'ids of cautions, tools, accesses, facts, book figures, units: what they mean',
    options: { json: 'flag' },
    load: async () => (await import('./shop.ts')).searchTheShop,
  },
  check: {
    use: 'check [FILES] [--doubts] [--json]',
    does: 'everything that is wrong with trees or a shop.json, a line each',
    options: { json: 'flag', doubts: 'flag' },
    load: async () => (await import('./check.ts')).checkTrees,
  },
  tell: {
    use: 'tell TREE [--as text|md|html]',
    does: 'a tree read back in sentences, each cause walked: the page to sign',
    options: { as: 'text' },
    load: async () => (await import('./tell.ts')).tellTrees,
  },
  table: {
    use: 'table TREE [--from TABLE.csv]',
    does: 'the numbers of a tree as CSV, causes down, checks across, both ways',
    options: { from: 'text' },
    load: async () => (await import('./table.ts')).tableOfTree,
  },
  upgrade: {
    use: 'upgrade FILES',
    does: 'trees of format 1 in the words of format 2; the old text stays beside them',
    options: {},
    load: async () => (await import('./upgrade.ts')).upgradeTrees,
  },
  plan: {
    use: 'plan [TREE] [--runs N] [--seed N] [--json]',
    does: 'what a tree costs in minutes, by who chooses the steps',
    options: { json: 'flag', runs: 'text', seed: 'text' },
    load: async () => (await import('./plan.ts')).planTrees,
  },
  draw: {
    use: 'draw TREE [--as text|svg|mermaid]',
    does: 'the way on one page',
    options: { as: 'text' },
    load: async () => (await import('./draw.ts')).drawTree,
  },
  schema: {
    use: 'schema',
    does: 'the schema by which an editor completes and checks, with the ids of the shop',
    options: {},
    load: async () => (await import('./schema.ts')).printSchema,
  },
};

const everyOption: Wanted = Object.assign(
  {},
  ...Object.values(verbs).map(({ options }) => options),
);

const verbNamed = (name: string): Row | undefined =>
  Object.hasOwn(verbs, name) ? verbs[name] : undefined;

/** The verb that these words begin with, whatever stands between. */
const verbAmong = (words: readonly string[]): Row | undefined =>
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
  io.out(row === undefined ? allHelp() : helpOf(row));
  return done;
}

const helpOf = ({ use, does }: Row): string => `droplight trees ${use}\n    ${does}\n`;

const allHelp = (): string =>
  [
    ...Object.values(verbs).map(helpOf),
    'TREE is the id of a tree in the library, or a file: my-complaint.json\n',
    '--trees DIR takes the trees of another folder.\n',
    'trees/README.md says how to write one.\n',
  ].join('');
