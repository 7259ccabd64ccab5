import type { Tell } from '../problem.ts';
import { isBrought } from './brought.ts';
import { isLook } from './looked.ts';
import { unlisted } from './model.ts';
import type { Written } from './written/written.ts';

/** What has an id of its author's choosing in a tree. */
type Named = 'cause' | 'check' | 'branch' | 'result';

/** The key that makes anything hang on facts, wherever it stands. */
const when = 'when';

/** Words that mean something else where an id of that kind may stand. */
const words: Readonly<Record<Named, readonly string[]>> = {
  cause: [unlisted, when],
  check: ['stop', when],
  branch: [when],
  result: ['always', 'is', 'if', 'go', when],
};

/** Every word that is no good id of something. */
export const reservedWords: readonly string[] = [
  ...new Set([...Object.values(words).flat(), 'constructor', 'prototype']),
];

/** Ids of a file that the format or the program uses for itself. @returns whether one is called "when" */
export function checkReserved(file: Written, tell: Tell): { readonly asWhen: boolean } {
  let asWhen = false;
  for (const { kind, id, path } of idsIn(file)) {
    const taken = takenBy(kind, id);
    if (taken === undefined) continue;
    asWhen ||= id === when;
    tell({ code: 'reserved-name', path, value: id, kin: `reserved ${id}`, ...taken });
  }
  return { asWhen };
}

type Id = { readonly kind: Named; readonly id: string; readonly path: string };

function* idsIn({ format, causes, checks, branches = {} }: Written): Generator<Id> {
  for (const id of Object.keys(causes)) yield { kind: 'cause', id, path: `causes.${id}` };
  for (const [id, check] of Object.entries(checks)) {
    yield { kind: 'check', id, path: `checks.${id}` };
    if (format > 1) yield* resultsIn(check, `checks.${id}`);
  }
  for (const [id, { of, look }] of Object.entries(branches)) {
    yield { kind: 'check', id, path: `branches.${id}` };
    for (const branch of Object.keys(of))
      yield { kind: 'branch', id: branch, path: `branches.${id}.of.${branch}` };
    if (look !== undefined) yield* resultsIn(look, `branches.${id}.look`);
  }
}

function* resultsIn({ results }: Written['checks'][string], path: string): Generator<Id> {
  for (const [index, { id }] of results.entries())
    yield { kind: 'result', id, path: `${path}.results[${index}].id` };
}

/** What keeps an id from being used, and how to mend it; undefined where nothing does. */
function takenBy(kind: Named, id: string): { message: string; mend: string } | undefined {
  const mend = `Give the ${kind} another id.`;
  if (words[kind].includes(id))
    return { message: `No ${kind} can be called "${id}": the format uses the word itself.`, mend };
  if (kind === 'cause' && isBrought(id))
    return {
      message: `"${id}" is the name of a fault that a repair brought: the program makes it.`,
      mend,
    };
  if (kind === 'check' && isLook(id))
    return {
      message: `"${id}" is the name of an open look at a cause: the program makes it.`,
      mend,
    };
  if (kind === 'branch' && /^\d+$/.test(id))
    return {
      message: `A branch called "${id}", by a number alone, loses its place in the row.`,
      mend: `Write a word before it: "no-${id}".`,
    };
  return undefined;
}
