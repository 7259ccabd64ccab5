import type { Problem, Tell } from '../problem.ts';
import type { Check, Tree } from './model.ts';
import { meant } from '../trade/nearest.ts';
import { checkNumbers } from './numbers.ts';
import { parseNext } from './next.ts';
import type { Shop } from './shop.ts';

/**
 * Finds what would make a tree unusable: names that lead nowhere, rows that do not fit the results,
 * bands with gaps. Names that live in `shop.json` are looked up when a shop is given.
 */
export function checkLinks(tree: Tree, file: string, shop?: Shop): Problem[] {
  const problems: Problem[] = [];
  const tell: Tell = (problem) => problems.push({ ...problem, file });
  checkStarts(tree, tell);
  for (const [id, check] of Object.entries(tree.checks)) {
    checkNames(tree, id, check, tell);
    checkNumbers(check, { path: `checks.${id}`, isComplaint: id === tree.complaint.confirm, tell });
  }
  for (const [id, cause] of Object.entries(tree.causes))
    cause.repair.then.forEach((check, index) =>
      known(tree.checks, check, {
        path: `causes.${id}.repair.then[${index}]`,
        what: 'check',
        tell,
      }),
    );
  if (shop !== undefined) checkShopNames(tree, shop, tell);
  return problems;
}

function checkStarts(tree: Tree, tell: Tell): void {
  const known_ = (id: string, path: string) =>
    known(tree.checks, id, { path, what: 'check', tell });
  known_(tree.start, 'start');
  known_(tree.complaint.confirm, 'complaint.confirm');
  tree.baseline.forEach((id, index) => known_(id, `baseline[${index}]`));
  if (Object.keys(tree.causes).length === 0)
    tell({
      code: 'no-causes',
      path: 'causes',
      message: 'The tree has no causes.',
      mend: 'Give at least one.',
    });
}

function checkNames(tree: Tree, id: string, check: Check, tell: Tell): void {
  const path = `checks.${id}`;
  const seen = new Set<string>();
  check.results.forEach((result, index) => {
    const here = `${path}.results[${index}]`;
    if (seen.has(result.id))
      tell({
        code: 'result-twice',
        path: `${here}.id`,
        value: result.id,
        message: `Two results of this check are called "${result.id}".`,
        mend: 'Give each its own id.',
      });
    seen.add(result.id);
    if (result.next !== undefined) checkNext(tree, result.next, `${here}.next`, tell);
  });
  for (const [before, results] of Object.entries(check.after ?? {})) {
    known(tree.checks, before, { path: `${path}.after`, what: 'check', tell });
    const offered = tree.checks[before]?.results.map((result) => result.id);
    for (const result of results)
      if (offered && !offered.includes(result))
        tell(unknown('result', result, `${path}.after.${before}`, offered));
  }
  for (const cause of Object.keys(check.points))
    if (cause !== 'unlisted')
      known(tree.causes, cause, { path: `${path}.points.${cause}`, what: 'cause', tell });
}

function checkNext(tree: Tree, text: string, path: string, tell: Tell): void {
  const next = parseNext(text);
  if (next.kind === 'check') known(tree.checks, next.check, { path, what: 'check', tell });
  if (next.kind === 'cause') known(tree.causes, next.cause, { path, what: 'cause', tell });
}

/** Conditions name facts that the shop asks for, and values that these can have. */
function checkFacts(tree: Tree, shop: Shop, tell: Tell): void {
  const places = [
    ...Object.entries(tree.causes).map(([id, { when }]) => [`causes.${id}.when`, when] as const),
    ...Object.entries(tree.checks).flatMap(([id, { when, results }]) => [
      [`checks.${id}.when`, when] as const,
      ...results.map((result, at) => [`checks.${id}.results[${at}].when`, result.when] as const),
    ]),
  ];
  for (const [path, when] of places)
    for (const [fact, wanted] of Object.entries(when ?? {})) {
      known(shop.facts, fact, { path, what: 'fact', tell });
      const values = Object.hasOwn(shop.facts, fact) ? shop.facts[fact]?.values : undefined;
      for (const value of values === undefined ? [] : [wanted].flat())
        known(values ?? {}, value, { path: `${path}.${fact}`, what: 'value', tell });
    }
}

function checkShopNames(tree: Tree, shop: Shop, tell: Tell): void {
  checkFacts(tree, shop, tell);
  const steps = [
    ...Object.entries(tree.checks).map(([id, check]) => [`checks.${id}`, check] as const),
    ...Object.entries(tree.causes).map(
      ([id, { repair }]) => [`causes.${id}.repair`, repair] as const,
    ),
  ];
  for (const [path, step] of steps)
    for (const [key, what, owner] of [
      ['cautions', 'caution', shop.cautions],
      ['tools', 'tool', shop.tools],
      ['access', 'access', shop.accesses],
    ] as const)
      step[key].forEach((id, index) =>
        known(owner, id, { path: `${path}.${key}[${index}]`, what, tell }),
      );
}

type Place = { readonly path: string; readonly what: string; readonly tell: Tell };

function known(owner: Readonly<Record<string, unknown>>, id: string, { path, what, tell }: Place) {
  if (!Object.hasOwn(owner, id)) tell(unknown(what, id, path, Object.keys(owner)));
}

function unknown(what: string, id: string, path: string, offered: readonly string[]) {
  return {
    code: `unknown-${what}`,
    path,
    value: id,
    message: `There is no ${what} "${id}".`,
    mend: offered.length > 0 ? meant(id, offered) : 'Add it, or name one that is there.',
  };
}
