import type { Problem, Tell } from '../problem.ts';
import { lintHazards } from './lint-hazards.ts';
import { lintNumbers } from './lint-numbers.ts';
import { lintWay } from './lint-way.ts';
import type { Check, Tree } from './model.ts';

/** Widest text that a list line (label) and a title line (ask) hold on an 80-column screen. */
const widest = { label: 42, ask: 62 } as const;

/**
 * What a tree that can be used still does wrong, all at once: ways that end nowhere, numbers that
 * cannot be meant so, hazards without their caution, words that are missing or too long.
 * @param trees ids of the whole library, where it is known, for `tree:ID`
 */
export function lintTree(tree: Tree, file: string, trees?: readonly string[]): readonly Problem[] {
  const problems: Problem[] = [];
  const tell: Tell = (problem) => problems.push({ ...problem, file });
  lintWay(tree, tell, trees);
  lintNumbers(tree, tell);
  lintHazards(tree, tell);
  for (const [id, check] of Object.entries(tree.checks))
    lintCheckWords(check, `checks.${id}`, tell);
  lintCauseWords(tree, tell);
  if (tree.id === 'brakes') lintBrakes(tree, tell);
  return problems;
}

const missing = (path: string, what: string) => ({
  code: 'words-missing',
  path,
  message: `There is no "${what}" here.`,
  mend: 'Say it in a few words; the screen and the account show it.',
});

function lintCheckWords(check: Check, path: string, tell: Tell): void {
  if (check.source === undefined)
    tell({
      code: 'no-source',
      path: `${path}.source`,
      message: 'The check does not say where it is from.',
      mend: 'Name the source, or write "common practice, no source".',
    });
  if (check.how.length === 0) tell(missing(`${path}.how`, 'how'));
  if (check.reading !== undefined && check.healthy === undefined)
    tell(missing(`${path}.healthy`, 'healthy'));
  if (check.ask.length > widest.ask) tell(tooLong(`${path}.ask`, check.ask, widest.ask));
  check.results.forEach(({ label }, at) => {
    if (label.length > widest.label)
      tell(tooLong(`${path}.results[${at}].label`, label, widest.label));
  });
}

const tooLong = (path: string, text: string, most: number) => ({
  code: 'words-too-long',
  path,
  value: text.slice(0, 60),
  message: `${text.length} characters; the screen has room for ${most}.`,
  mend: 'Say it shorter.',
});

function lintCauseWords(tree: Tree, tell: Tell): void {
  for (const [id, cause] of Object.entries(tree.causes))
    for (const part of ['where', 'shows'] as const)
      if (cause[part] === undefined) tell(missing(`causes.${id}.${part}`, part));
}

/** Triage of brakes never invites anybody to drive. */
function lintBrakes(tree: Tree, tell: Tell): void {
  const texts = JSON.stringify(tree).match(/"[^"]*\bdrive\b[^"]*"/gi) ?? [];
  for (const text of texts)
    tell({
      code: 'brakes-drive',
      path: '',
      value: text.slice(0, 60),
      message: 'The brake tree says "drive".',
      mend: 'Say what is to be done instead: stop, tag the key, have it towed.',
    });
}

/** Checks that carry one id in several trees must show the same results. */
export function lintLibrary(trees: readonly Tree[]): readonly Problem[] {
  const first = new Map<string, { readonly tree: string; readonly results: string }>();
  return trees.flatMap((tree) =>
    Object.entries(tree.checks).flatMap(([id, { results }]): Problem[] => {
      const names = results.map((result) => result.id).join(', ');
      const known = first.get(id) ?? { tree: tree.id, results: names };
      first.set(id, known);
      if (known.results === names) return [];
      return [
        {
          code: 'check-differs',
          file: `${tree.id}.json`,
          path: `checks.${id}.results`,
          value: names,
          message: `The tree "${known.tree}" has a check of this name with other results: ${known.results}.`,
          mend: 'Give both the same results, or one another name.',
        },
      ];
    }),
  );
}
