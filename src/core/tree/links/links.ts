import { isOwn } from '../own/bare.ts';
import { unlisted } from '../model.ts';
import { showPath, type Problem, type Tell } from '../../problem.ts';
import type { When } from '../basics.ts';
import type { Check, Tree } from '../model.ts';
import { checkNumbers } from './numbers.ts';
import { strayNext } from '../way/next.ts';
import { checkReserved } from '../reserved.ts';
import type { Shop } from '../shop.ts';
import { checkFormatTwo } from './format-two.ts';
import { checkWritten } from '../written/check.ts';
import { atBlocks } from '../written/check-branches.ts';
import { fileOf } from '../written/settle.ts';
import { unknown, unknownAmong, unknownInShop, type Named } from '../unknown.ts';

/**
 * Finds what would make a tree unusable: names that lead nowhere, rows that do not fit the results,
 * bands with gaps. Names that live in `shop.json` are looked up when a shop is given. Places are put
 * into words for a problem only: a library is read much oftener than it is wrong.
 */
export function checkLinks(tree: Tree, file: string, shop?: Shop): Problem[] {
  const problems: Problem[] = [];
  const tell: Tell = (problem) => problems.push({ ...problem, file });
  checkStarts(tree, tell);
  const { asWhen } = checkReserved(fileOf(tree), tell);
  for (const [id, check] of Object.entries(tree.checks)) {
    checkNames(tree, id, check, tell);
    checkNumbers(check, { path: `checks.${id}`, isComplaint: id === tree.complaint.confirm, tell });
  }
  for (const [id, cause] of Object.entries(tree.causes))
    for (const [index, check] of cause.repair.then.entries())
      if (!has(tree.checks, check))
        tell(unknown('check', check, `causes.${id}.repair.then[${index}]`, tree.checks));
  if (tree.written !== undefined) checkWritten(tree.written, tell);
  checkFormatTwo(tree, tell, shop);
  if (shop !== undefined) {
    const { causes, checks, branches, safeguards, feed } = fileOf(tree);
    // What is called "when" cannot be told from a condition.
    if (!asWhen) checkFacts({ causes, checks, branches, safeguards, feed }, shop, [], tell);
    checkShopNames(tree, shop, tell);
  }
  return atBlocks(tree.written, problems);
}

const has = (owner: Named, id: string): boolean => Object.hasOwn(owner, id);

function checkStarts(tree: Tree, tell: Tell): void {
  const places = [
    ['start', tree.start],
    ['complaint.confirm', tree.complaint.confirm],
    ...tree.baseline.map((id, index) => [`baseline[${index}]`, id] as const),
  ] as const;
  for (const [path, id] of places)
    if (!has(tree.checks, id)) tell(unknown('check', id, path, tree.checks));
  if (Object.keys(tree.causes).length === 0 && !isOwn(tree))
    tell({
      code: 'no-causes',
      path: 'causes',
      message: 'The tree has no causes.',
      mend: 'Give at least one.',
    });
}

function checkNames(tree: Tree, id: string, check: Check, tell: Tell): void {
  const path = `checks.${id}`;
  checkResults(tree, check, path, tell);
  if (check.after !== undefined) checkGates(tree, check.after, `${path}.after`, tell);
  const rows = tree.written === undefined ? check.points : (tree.written.checks[id]?.points ?? {});
  for (const cause of Object.keys(rows))
    if (cause !== unlisted && !has(tree.causes, cause))
      tell(unknown('cause', cause, `${path}.points.${cause}`, tree.causes));
}

function checkResults(tree: Tree, check: Check, path: string, tell: Tell): void {
  const seen = new Set<string>();
  for (const [index, result] of check.results.entries()) {
    if (seen.has(result.id))
      tell({
        code: 'result-twice',
        path: `${path}.results[${index}].id`,
        value: result.id,
        message: `Two results of this check are called "${result.id}".`,
        mend: 'Give each its own id.',
      });
    seen.add(result.id);
    const stray = result.next === undefined ? undefined : strayNext(tree, result.next);
    if (stray !== undefined) tell({ ...stray, path: `${path}.results[${index}].next` });
  }
}

type Gates = NonNullable<Check['after']>;

/** Checks that must come first, and the results they must have shown. */
function checkGates(tree: Tree, gates: Gates, path: string, tell: Tell): void {
  for (const [before, results] of Object.entries(gates)) {
    if (!has(tree.checks, before)) tell(unknown('check', before, path, tree.checks));
    const offered = tree.checks[before]?.results.map((result) => result.id) ?? results;
    for (const result of results)
      if (!offered.includes(result))
        tell(unknownAmong('result', result, `${path}.${before}`, offered));
  }
}

/** Conditions name facts that the shop asks for, and values that these can have, wherever they stand. */
function checkFacts(part: unknown, shop: Shop, path: PropertyKey[], tell: Tell): void {
  if (typeof part !== 'object' || part === null) return;
  const isList = Array.isArray(part);
  for (const [key, value] of Object.entries(part)) {
    path.push(isList ? Number(key) : key);
    if (key === 'when') checkWhen(value as When, shop, showPath(path), tell);
    else checkFacts(value, shop, path, tell);
    path.pop();
  }
}

function checkWhen(when: When, shop: Shop, path: string, tell: Tell): void {
  for (const [fact, wanted] of Object.entries(when)) {
    if (!has(shop.facts, fact)) {
      tell(unknownInShop('fact', fact, path, shop.facts));
      continue;
    }
    const values = shop.facts[fact]?.values ?? {};
    for (const value of [wanted].flat())
      if (!has(values, value)) tell(unknown('value', value, `${path}.${fact}`, values));
  }
}

function checkShopNames(tree: Tree, shop: Shop, tell: Tell): void {
  for (const [id, check] of Object.entries(tree.checks))
    checkStep(check, shop, (key, at) => `checks.${id}.${key}[${at}]`, tell);
  for (const [id, { repair }] of Object.entries(tree.causes))
    checkStep(repair, shop, (key, at) => `causes.${id}.repair.${key}[${at}]`, tell);
}

type Step = Pick<Check, 'cautions' | 'tools' | 'access' | 'shut'>;

const shopNames = [
  ['cautions', 'caution', 'cautions'],
  ['tools', 'tool', 'tools'],
  ['access', 'access', 'accesses'],
  ['shut', 'access', 'accesses'],
] as const;

type Place = (key: string, at: number) => string;

function checkStep(step: Step, shop: Shop, place: Place, tell: Tell): void {
  for (const [key, what, owner] of shopNames)
    for (const [at, id] of (step[key] ?? []).entries())
      if (!has(shop[owner], id)) tell(unknownInShop(what, id, place(key, at), shop[owner]));
}
