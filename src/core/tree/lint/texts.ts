import type { Tell } from '../../problem.ts';
import { clean, cleanLine } from '../../text.ts';
import { booksOf } from '../limits.ts';
import type { Check, Tree } from '../model.ts';

/** Longest texts that a screen of 60 columns shows on one line. */
export const longest = { label: 40, ask: 60 } as const;

/** What a check or a cause must say, and what is too long for the screen. */
export function lintTexts(tree: Tree, tell: Tell): void {
  lintMarks(tree, tell);
  lintAlike(tree, tell);
  for (const [id, check] of Object.entries(tree.checks)) {
    lintCheck(check, `checks.${id}`, tell);
    lintBookLabels(tree, id, tell);
  }
  for (const [id, cause] of Object.entries(tree.causes)) {
    if (cause.where === undefined)
      tell(missing('no-where', `causes.${id}.where`, 'where on the vehicle this cause sits'));
    if (cause.shows === undefined)
      tell(missing('no-shows', `causes.${id}.shows`, 'how this cause shows itself'));
  }
}

/** Texts with escape sequences or marks that hide or turn text: shown harmlessly, but never meant. */
function lintMarks(tree: Tree, tell: Tell): void {
  for (const [path, text] of textsOf(tree))
    if (clean(text) !== text)
      tell({
        code: 'text-marks',
        path,
        value: cleanLine(text).slice(0, 60),
        message: 'The text holds control characters or marks that are not seen.',
        mend: 'Type it anew in plain characters.',
      });
}

/** Checks that ask in the same words: in a list nobody can tell them apart. */
function lintAlike({ checks }: Tree, tell: Tell): void {
  const first = new Map<string, string>();
  for (const [id, { ask }] of Object.entries(checks)) {
    const before = first.get(ask);
    if (before === undefined) first.set(ask, id);
    else
      tell({
        code: 'asks-alike',
        path: `checks.${id}.ask`,
        value: ask,
        message: `The check "${before}" asks in the same words: a list cannot tell the two apart.`,
        mend: 'Say what this one asks; of branches {row} stands for those that are parted.',
      });
  }
}

function lintCheck(check: Check, path: string, tell: Tell): void {
  if (check.how.length === 0)
    tell(missing('no-how', `${path}.how`, 'how the check is done, in 2 to 5 short steps'));
  if (check.source === undefined)
    tell(
      missing('no-source', `${path}.source`, 'a source, or "common practice, no source", for this'),
    );
  if (check.reading !== undefined && check.healthy === undefined)
    tell(missing('no-healthy', `${path}.healthy`, 'what a good vehicle reads here'));
  tooLong(check.ask, longest.ask, `${path}.ask`, tell);
  check.results.forEach(({ label }, index) =>
    tooLong(label, longest.label, `${path}.results[${index}].label`, tell),
  );
}

/** A label with a number of its own, where the limit moves; one that the band makes moves with it. */
function lintBookLabels({ checks, written }: Tree, id: string, tell: Tell): void {
  const file = written?.checks[id];
  const own = file?.limits === undefined ? undefined : file.results.map(({ label }) => label ?? '');
  checks[id]?.results.forEach((result, index) => {
    const label = own?.[index] ?? result.label;
    if (booksOf(result).length > 0 && /\d/.test(label))
      tell({
        code: 'book-label',
        path: `checks.${id}.results[${index}].label`,
        value: label,
        message: 'The label names a number, and the limit moves with the own book of the vehicle.',
        mend: 'Say the degree only ("good", "low"): the screen tells by which figure it is judged.',
      });
  });
}

const missing = (code: string, path: string, what: string) => ({
  code,
  path,
  message: `Nothing says ${what}.`,
  mend: 'Add it.',
});

function tooLong(text: string, most: number, path: string, tell: Tell): void {
  const marks = text.length;
  if (marks > most)
    tell({
      code: 'text-long',
      path,
      value: text,
      message: `${marks} characters; the screen has room for ${most}.`,
      mend: 'Say it in fewer words.',
    });
}

/** Every text of a tree that a mechanic reads, with its path. */
export function textsOf(tree: Tree): readonly (readonly [path: string, text: string])[] {
  const list = (path: string, texts: readonly string[]) =>
    texts.map((text, index) => [`${path}[${index}]`, text] as const);
  const some = (path: string, text: string | undefined) =>
    text === undefined ? [] : [[path, text] as const];
  return [
    ['title', tree.title],
    ['complaint.say', tree.complaint.say],
    ...some('triage', tree.triage),
    ...Object.entries(tree.causes).flatMap(([id, { name, where, shows, repair, triage }]) => [
      ...some(`causes.${id}.triage`, triage),
      [`causes.${id}.name`, name] as const,
      ...some(`causes.${id}.where`, where),
      ...some(`causes.${id}.shows`, shows),
      ...list(`causes.${id}.repair.do`, repair.do),
      ...list(`causes.${id}.repair.parts`, repair.parts),
    ]),
    ...Object.entries(tree.checks).flatMap(([id, { ask, how, healthy, results }]) => [
      [`checks.${id}.ask`, ask] as const,
      ...list(`checks.${id}.how`, how),
      ...some(`checks.${id}.healthy`, healthy),
      ...results.flatMap(({ label, reason }, index) => [
        [`checks.${id}.results[${index}].label`, label] as const,
        ...some(`checks.${id}.results[${index}].reason`, reason),
      ]),
    ]),
  ];
}
