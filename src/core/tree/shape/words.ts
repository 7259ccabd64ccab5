import type * as z from 'zod';
import { showPath, showValue, type Problem } from '../../problem.ts';
import { meant } from '../../trade/units/nearest.ts';
import { asId, homeOf, numberIn, splitByComma, valueAt, type Held } from './guess.ts';
import { flatIssues, type Issue } from './issues.ts';
import { keysOf, modelsAt, wantedOf } from './models.ts';

type Path = readonly PropertyKey[];
type Told = Pick<Problem, 'message' | 'mend' | 'kin'>;

/** What a model says of a value, as problems in an author's words; one mistake is told once. */
export function shapeProblems(
  held: Held,
  issues: readonly z.core.$ZodIssue[],
  file: string,
): readonly Problem[] {
  const flat = flatIssues(issues);
  const homes = new Set(
    flat.flatMap((issue) =>
      issue.kind === 'unknown-key' && issue.path.length > 0
        ? [showPath(homeOf(held, issue.path.slice(0, -1), issue.key)?.path ?? [''])]
        : [],
    ),
  );
  return flat
    .filter((issue) => !(issue.kind !== 'unknown-key' && homes.has(showPath(issue.path))))
    .map((issue) => ({
      code: 'wrong-shape',
      file,
      path: showPath(issue.path),
      value: showValue(valueAt(held.whole, issue.path)),
      ...wordsFor(held, issue),
    }));
}

/** What a place is called: the tree, a check, the key itself. */
function thingAt(path: Path): string {
  const [top, , third, fourth] = path;
  if (path.length === 0) return 'tree';
  if (path.length === 2 && top === 'causes') return 'cause';
  if (path.length === 2 && top === 'checks') return 'check';
  if (path.length === 3 && third === 'repair') return 'repair';
  if (path.length === 4 && third === 'results' && typeof fourth === 'number') return 'result';
  return `"${nameOf(path)}" block`;
}

/** The last key of a path that has a name. */
const nameOf = (path: Path): string =>
  String(path.findLast((step) => typeof step === 'string') ?? 'tree');

function wordsFor(held: Held, issue: Issue): Told {
  const found = valueAt(held.whole, issue.path);
  switch (issue.kind) {
    case 'unknown-key':
      return strangeKey(held, issue.path.slice(0, -1), issue.key);
    case 'invalid_type':
      return wrongKind(held, issue.path, found);
    case 'invalid_value':
      return wrongWord(issue, found);
    case 'wrong-id':
      return wrongId(issue.id);
    case 'too_small':
    case 'too_big':
      return wrongSize(held, issue, found);
    default:
      return { message: `This cannot stand here: ${issue.message}.`, mend: 'Mend it.' };
  }
}

function strangeKey(held: Held, block: Path, key: string): Told {
  const thing = thingAt(block);
  const home = homeOf(held, block, key);
  const message = `A ${thing} has no key "${key}".`;
  if (home?.kind === 'misspelt') return { message, mend: `Did you mean "${nameOf(home.path)}"?` };
  if (home !== undefined) {
    const there = home.taken
      ? ', where it stands already: keep one of the two.'
      : ': move it there.';
    const owner = home.path.slice(0, -1);
    const where = home.kind === 'inner' ? `in "${nameOf(owner)}"` : `in the ${thingAt(owner)}`;
    return { message, mend: `"${key}" belongs ${where}${there}` };
  }
  const keys = keysOf(modelsAt(held.model, block));
  return {
    message,
    mend:
      keys.length > 0
        ? `It has: ${keys.join(', ')}. A remark of your own stands behind //.`
        : 'Move it to where it belongs.',
  };
}

function wrongKind({ model }: Held, path: Path, found: unknown): Told {
  const name = nameOf(path);
  const wanted = wantedOf(modelsAt(model, path));
  if (found === undefined)
    return {
      message: `The ${thingAt(path.slice(0, -1))} has no "${name}".`,
      mend: `Add it: ${wanted}.`,
    };
  if (typeof found === 'number' && !Number.isFinite(found))
    return { message: `The number for "${name}" is too large to be one.`, mend: 'Mend it.' };
  return {
    message: `"${name}" wants ${wanted}; here stands ${showKind(found)}.`,
    mend: rewritten(wanted, found) ?? `Write ${wanted}.`,
  };
}

/** The same value in the form that is wanted, where that can be seen. */
function rewritten(wanted: string, found: unknown): string | undefined {
  if (wanted.startsWith('a number') && typeof found === 'string') {
    const number = numberIn(found);
    return number === undefined ? undefined : `Write ${number}, without quotes.`;
  }
  if (wanted.startsWith('a text') && typeof found === 'number') return `Write "${found}".`;
  if (wanted.startsWith('a list') && typeof found === 'string')
    return `Put it into brackets: [${showValue(found)}].`;
  return undefined;
}

function showKind(found: unknown): string {
  if (Array.isArray(found)) return 'a list';
  if (found === null) return 'null, which is nothing';
  if (typeof found === 'object') return 'a block in { }';
  return typeof found === 'string' ? `the text ${showValue(found)}` : showValue(found);
}

function wrongWord({ values }: Issue & { kind: 'invalid_value' }, found: unknown): Told {
  const words = values.map(String);
  const list = `It may be: ${words.join(', ')}.`;
  const near = meant(String(found), words);
  return {
    message:
      found === undefined ? 'Something is missing here.' : `${showValue(found)} cannot stand here.`,
    mend: near.startsWith('Did') && typeof found === 'string' ? `${near} ${list}` : list,
  };
}

function wrongId(id: string): Told {
  const better = asId(id);
  const message = `"${id}" cannot be an id.`;
  if (better === '' || better === id)
    return {
      message,
      kin: `id ${id}`,
      mend: 'This name is taken by the program itself: choose another.',
    };
  return {
    message,
    kin: `id ${id}`,
    mend: /[A-Z]/.test(id)
      ? `Ids are lower-case: ${better}.`
      : `Ids are letters, digits and hyphens, 64 at most: ${better}.`,
  };
}

type Size = Issue & { kind: 'too_small' | 'too_big' };

function wrongSize(held: Held, issue: Size, found: unknown): Told {
  const { limit, path } = issue;
  const less = issue.kind === 'too_small';
  if (Array.isArray(found))
    return {
      message: `"${nameOf(path)}" has ${found.length} of at ${less ? 'least' : 'most'} ${limit}.`,
      mend: less ? 'Add what is missing.' : 'Leave some out.',
    };
  if (typeof found !== 'string') return wrongNumber(held, issue, found);
  if (less) return { message: 'The text is empty.', mend: 'Write it, or take the key out.' };
  return {
    message: `The text has ${found.length} characters; ${limit} is the most.`,
    mend: 'Say it in fewer words.',
  };
}

function wrongNumber(
  { whole }: Held,
  { kind, limit, inclusive, path }: Size,
  found: unknown,
): Told {
  const less = kind === 'too_small';
  const row = valueAt(whole, path.slice(0, -1));
  const comma = Array.isArray(row) && !less ? splitByComma(row) : undefined;
  if (comma !== undefined)
    return {
      kin: 'decimal comma',
      message: 'The numbers of this row have decimal commas.',
      mend: `Write the decimal point: ${comma}.`,
    };
  if (isChance(path) && !less)
    return {
      kin: 'percent',
      message: `${showValue(found)} is no chance: these go from 0 to 1.`,
      mend: `If it is percent, write ${Number(found) / 100}.`,
    };
  const [atLimit, beyond] = less ? ['at least', 'more than'] : ['at most', 'less than'];
  return {
    message: `${showValue(found)} is too ${less ? 'small' : 'large'} for "${nameOf(path)}".`,
    mend: `It is ${inclusive ? atLimit : beyond} ${limit}.`,
  };
}

/** Whether a place holds a chance from 0 to 1. */
export const isChance = (path: Path): boolean =>
  path[0] === 'checks' && (path[2] === 'background' || path[2] === 'points');
