import { bad, good, type Parsed } from '../../core/problem.ts';
import { asWalked } from '../../core/session/header/walked-tree.ts';
import { misfit } from '../../core/tree/fit.ts';
import type { Tree } from '../../core/tree/model.ts';
import type { Library } from '../../core/tree/shop.ts';
import type { Io } from '../io.ts';
import { openTree } from '../library.ts';
import { readFacts } from '../open.ts';
import type { Given } from '../options.ts';

/** What a fault is hidden in: a tree, as a vehicle with these facts has it. */
export type Ground = {
  readonly tree: Tree;
  readonly library: Library;
  readonly facts: Readonly<Record<string, string>>;
  readonly walked: Tree;
};

export function groundFor(io: Io, given: Given, named: string, typed: string): Parsed<Ground> {
  const opened = openTree(io, given, named);
  if (opened.kind === 'bad') return opened;
  const { tree, library } = opened.value;
  const facts = readFacts(typed, library);
  if (facts.kind === 'bad') return facts;
  const wrong = misfit(tree, facts.value);
  if (wrong !== undefined) return bad(wrong);
  const walked = asWalked(tree, { facts: facts.value });
  return good({ tree, library, facts: facts.value, walked });
}
