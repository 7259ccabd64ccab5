import { done, printJson, type Ended, type Io } from '../io.ts';
import { readOptions, wrongUse, type Given } from '../options.ts';

type Verb = (io: Io, given: Given, words: readonly string[]) => Ended;

/** Each verb is loaded when it is called: a list of names needs no reasoning. */
const verbs: Readonly<Record<string, () => Promise<Verb>>> = {
  list: async () => (await import('./list.ts')).listTrees,
  check: async () => (await import('./check.ts')).checkTrees,
  draw: async () => (await import('./draw.ts')).drawTree,
  plan: async () => (await import('./plan.ts')).planTrees,
  new: async () => (await import('./new.ts')).newTree,
  schema: async () => {
    const { treeSchema } = await import('../../core/session/schema.ts');
    return (io) => {
      printJson(io, treeSchema());
      return done;
    };
  },
};

/** `droplight trees VERB`: what there is in the library, and what it is worth. */
export async function trees(io: Io, args: readonly string[]): Promise<Ended> {
  const given = readOptions(args, {
    json: 'flag',
    doubts: 'flag',
    as: 'text',
    runs: 'text',
    seed: 'text',
  });
  if (given.kind === 'bad') return given;
  const [name = 'list', ...words] = given.value.words;
  const verb = Object.hasOwn(verbs, name) ? verbs[name] : undefined;
  if (verb !== undefined) return (await verb())(io, given.value, words);
  const use = `droplight trees ${Object.keys(verbs).join(' | ')}`;
  return wrongUse(`"trees ${name}" is not known.`, use);
}
