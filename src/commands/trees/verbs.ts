import type { Ended, Io } from '../io.ts';
import type { Given } from '../options.ts';
import type { Use } from '../uses.ts';

type Verb = (io: Io, given: Given, words: readonly string[]) => Ended | Promise<Ended>;

/** How a verb is called, and the verb itself: each is loaded when it is called. */
export type VerbRow = Use & { readonly load: () => Promise<Verb> };

/** Every verb of `droplight trees`, by the word that calls it. */
export const verbs: Readonly<Record<string, VerbRow>> = {
  list: {
    use: 'trees list [--json]',
    does: 'the trees by group and name; "trees check" reads the files through',
    options: { json: 'flag' },
    example: 'droplight trees list',
    load: async () => (await import('./list.ts')).listTrees,
  },
  new: {
    use: 'trees new [FILE]',
    does: 'a tree to begin with, beside the others; printed where no file is named',
    options: {},
    example: 'droplight trees new my-complaint.json',
    words: 'file',
    load: async () => (await import('./new.ts')).newTree,
  },
  from: {
    use: 'trees from SESSION',
    does: 'a job without a tree as a tree to finish; its numbers are left to fill',
    options: {},
    example: 'droplight trees from SESSION',
    words: 'session',
    load: async () => (await import('./from.ts')).treeFrom,
  },
  write: {
    use: 'trees write [FILE]',
    does: 'asks its way to a tree, a line an answer; each is kept, to go on later',
    options: {},
    example: 'droplight trees write my-complaint.json',
    words: 'file',
    load: async () => (await import('./write.ts')).writeTree,
  },
  shop: {
    use: 'trees shop [WORDS] [--json]',
    does: 'ids of cautions, tools, accesses, facts, book figures, units: what they mean',
    options: { json: 'flag' },
    example: 'droplight trees shop battery',
    load: async () => (await import('./shop.ts')).searchTheShop,
  },
  check: {
    use: 'trees check [FILES] [--doubts] [--json]',
    does: 'everything that is wrong with trees or a shop.json, a line each',
    options: { json: 'flag', doubts: 'flag' },
    example: 'droplight trees check my-complaint.json',
    words: 'file',
    load: async () => (await import('./check.ts')).checkTrees,
  },
  tell: {
    use: 'trees tell TREE [--as text|md|html]',
    does: 'a tree read back in sentences, each cause walked: the page to sign',
    options: { as: 'text' },
    example: 'droplight trees tell no-supply --as md',
    words: 'tree',
    values: { as: ['text', 'md', 'html'] },
    load: async () => (await import('./tell.ts')).tellTrees,
  },
  table: {
    use: 'trees table TREE [--from TABLE.csv]',
    does: 'the numbers of a tree as CSV, causes down, checks across, both ways',
    options: { from: 'text' },
    example: 'droplight trees table my-complaint.json',
    words: 'tree',
    load: async () => (await import('./table.ts')).tableOfTree,
  },
  upgrade: {
    use: 'trees upgrade FILES',
    does: 'trees of format 1 in the words of format 2; the old text stays beside them',
    options: {},
    example: 'droplight trees upgrade my-complaint.json',
    words: 'file',
    load: async () => (await import('./upgrade.ts')).upgradeTrees,
  },
  plan: {
    use: 'trees plan [TREE] [--runs N] [--seed N] [--json]',
    does: 'what a tree costs in minutes, by who chooses the steps',
    options: { json: 'flag', runs: 'text', seed: 'text' },
    example: 'droplight trees plan no-supply --runs 200',
    words: 'tree',
    load: async () => (await import('./plan.ts')).planTrees,
  },
  draw: {
    use: 'trees draw TREE [--as text|svg|mermaid]',
    does: 'the way on one page: as text, drawn or as a chart',
    options: { as: 'text' },
    example: 'droplight trees draw no-supply --as svg',
    words: 'tree',
    values: { as: ['text', 'svg', 'mermaid'] },
    load: async () => (await import('./draw.ts')).drawTree,
  },
  schema: {
    use: 'trees schema',
    does: 'the schema by which an editor completes and checks, with the ids of the shop',
    options: {},
    example: 'droplight trees schema',
    load: async () => (await import('./schema.ts')).printSchema,
  },
};
