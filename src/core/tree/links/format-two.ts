import type { Tell } from '../../problem.ts';
import { checkReadings } from './readings.ts';
import { booksOf } from '../limits.ts';
import type { Check, Safeguard, Tree } from '../model.ts';
import type { Shop } from '../shop.ts';
import { unknown, unknownAmong, unknownInShop } from '../unknown.ts';

/** What is wrong with the names and numbers of safeguards, passing states, and several readings. */
export function checkFormatTwo(tree: Tree, tell: Tell, shop?: Shop): void {
  for (const [index, safeguard] of (tree.safeguards ?? []).entries())
    checkSafeguard(tree, safeguard, `safeguards[${index}]`, tell);
  checkTogether(tree, tell);
  for (const [id, check] of Object.entries(tree.checks)) {
    checkStates(tree, check, `checks.${id}`, tell);
    checkReadings(check, `checks.${id}`, tell);
    for (const [index, cause] of (check['looks-at'] ?? []).entries())
      if (!Object.hasOwn(tree.causes, cause))
        tell(unknown('cause', cause, `checks.${id}.looks-at[${index}]`, tree.causes));
    if (shop !== undefined) checkBook(check, shop, `checks.${id}`, tell);
  }
  for (const [id, { repair }] of Object.entries(tree.causes))
    checkStates(tree, repair, `causes.${id}.repair`, tell);
  if (tree.format === 1) refuseInFormatOne(tree, tell);
}

function checkSafeguard(
  tree: Tree,
  { before, check, shows }: Safeguard,
  path: string,
  tell: Tell,
): void {
  for (const [index, cause] of (before.repair ?? []).entries())
    if (!Object.hasOwn(tree.causes, cause))
      tell(unknown('cause', cause, `${path}.before.repair[${index}]`, tree.causes));
  const results = tree.checks[check]?.results.map(({ id }) => id);
  if (results === undefined) {
    tell(unknown('check', check, `${path}.check`, tree.checks));
    return;
  }
  for (const result of shows)
    if (!results.includes(result)) tell(unknownAmong('result', result, `${path}.shows`, results));
  if (results.every((result) => shows.includes(result)))
    tell({
      code: 'safeguard-of-nothing',
      path: `${path}.shows`,
      message: 'The safeguard is content with every result of its check.',
      mend: 'Name only the results after which the step is safe.',
    });
}

function checkTogether({ states = {} }: Tree, tell: Tell): void {
  for (const [id, { with: others = [] }] of Object.entries(states))
    for (const [index, other] of others.entries())
      if (!Object.hasOwn(states, other))
        tell(unknown('state', other, `states.${id}.with[${index}]`, states));
}

type Spending = Pick<Check, 'only-while' | 'spends'>;

function checkStates(
  { states = {} }: Tree,
  step: Partial<Spending>,
  path: string,
  tell: Tell,
): void {
  const named = [
    ...(step['only-while'] === undefined ? [] : [['only-while', step['only-while']] as const]),
    ...(step.spends ?? []).map((state, index) => [`spends[${index}]`, state] as const),
  ];
  for (const [at, state] of named)
    if (!Object.hasOwn(states, state)) tell(unknown('state', state, `${path}.${at}`, states));
}

function checkBook(check: Check, shop: Shop, path: string, tell: Tell): void {
  for (const [index, result] of check.results.entries())
    for (const id of booksOf(result)) {
      const figure = shop.book[id];
      const at = `${path}.results[${index}]`;
      if (figure === undefined) tell(unknownInShop('book', id, at, shop.book));
      else if (figure.quantity !== check.reading?.quantity)
        tell({
          code: 'book-quantity',
          path: at,
          value: id,
          message: `The book figure "${id}" is a ${figure.quantity}, the reading is not.`,
          mend: 'Name a book figure of the same quantity.',
        });
    }
}

/** Keys that only the second format has, with the value that a tree without them has. */
function refuseInFormatOne(tree: Tree, tell: Tell): void {
  const used = [
    ...(tree.safeguards === undefined ? [] : ['safeguards']),
    ...(tree.states === undefined ? [] : ['states']),
    ...Object.entries(tree.checks).flatMap(([id, check]) =>
      (['told', 'readings', 'judge', 'each', 'looks-at', 'only-while', 'spends', 'shut'] as const)
        .filter((key) => check[key] !== undefined)
        .map((key) => `checks.${id}.${key}`),
    ),
    ...Object.entries(tree.causes).flatMap(([id, { short, repair }]) => [
      ...(short === undefined ? [] : [`causes.${id}.short`]),
      ...(['part', 'try', 'sure-at', 'spends'] as const)
        .filter((key) => repair[key] !== undefined)
        .map((key) => `causes.${id}.repair.${key}`),
    ]),
  ];
  for (const path of used)
    tell({
      code: 'needs-format-two',
      path,
      message: 'This key belongs to format 2, and the tree says format 1.',
      mend: 'Write "format": 2.',
    });
}
