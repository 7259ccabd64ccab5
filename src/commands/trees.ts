import { treeSchema } from '../core/session/schema.ts';
import { fail, printJson, type ExitCode, type Io } from './io.ts';
import { firstOf, readOptions, type Given } from './options.ts';
import { checkTrees } from './trees-check.ts';
import { drawTree } from './trees-draw.ts';
import { listTrees } from './trees-list.ts';
import { newTree } from './trees-new.ts';
import { planTrees } from './trees-plan.ts';

type Verb = (io: Io, given: Given, words: readonly string[]) => ExitCode;

const verbs: Readonly<Record<string, Verb>> = {
  list: listTrees,
  check: checkTrees,
  draw: (io, given, [id]) => drawTree(io, given, id),
  plan: (io, given, [id]) => planTrees(io, given, id),
  new: (io, _, [file]) => newTree(io, file),
  schema: (io) => {
    printJson(io, treeSchema());
    return 0;
  },
};

/** `droplight trees VERB`: what there is in the library, and what it is worth. */
export async function trees(io: Io, args: readonly string[]): Promise<ExitCode> {
  const given = readOptions(args, {
    json: 'flag',
    doubts: 'flag',
    as: 'text',
    runs: 'text',
    seed: 'text',
  });
  if (given.kind === 'bad') return fail(io, firstOf(given.problems));
  const [name = 'list', ...words] = given.value.words;
  const verb = Object.hasOwn(verbs, name) ? verbs[name] : undefined;
  if (verb !== undefined) return verb(io, given.value, words);
  return fail(io, {
    code: 'wrong-use',
    message: `"trees ${name}" is not known.`,
    mend: `Use: droplight trees ${Object.keys(verbs).join(' | ')}`,
  });
}
