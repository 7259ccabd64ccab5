import type * as z from 'zod';
import { sum } from '../../sum.ts';
import { nearest } from '../../trade/units/nearest.ts';
import { asId, homeOf, numberIn, valueAt, type Held } from './guess.ts';
import { flatIssues, type Issue } from './issues.ts';
import { modelsAt, wantedOf } from './models.ts';
import { isChance } from './words.ts';

type Path = readonly PropertyKey[];

/**
 * A value with every slip put right as the messages say: a key where it belongs, an id in small
 * letters, a number out of its quotes. What is still wrong then is wrong by itself.
 */
export function mendedShape(model: z.ZodType, value: unknown): unknown {
  const whole: unknown = JSON.parse(JSON.stringify(value) ?? 'null');
  const parsed = model.safeParse(whole, { reportInput: true });
  const issues = parsed.success ? [] : flatIssues(parsed.error.issues);
  for (const issue of issues) mend({ model, whole }, issue);
  const ids = issues.flatMap((one) => (one.kind === 'wrong-id' ? [one.id] : []));
  return ids.length > 0 ? withIds(whole, new Set(ids)) : whole;
}

function mend(held: Held, issue: Issue): void {
  const { whole } = held;
  if (issue.kind === 'unknown-key') moveHome(held, issue.path, issue.key);
  if (issue.kind === 'too_big' && isChance(issue.path)) fromPercent(whole, issue.path);
  const found = valueAt(whole, issue.path);
  if (typeof found !== 'string') return;
  if (issue.kind === 'invalid_value') {
    const [near] = nearest(found, issue.values.map(String));
    if (near !== undefined) put(whole, issue.path, near);
  }
  const number = issue.kind === 'invalid_type' ? numberIn(found) : undefined;
  const wanted = wantedOf(modelsAt(held.model, issue.path));
  if (wanted.startsWith('a number') && number !== undefined) put(whole, issue.path, number);
}

function moveHome(held: Held, path: Path, key: string): void {
  const home = homeOf(held, path.slice(0, -1), key);
  if (home === undefined || home.taken) return;
  if (put(held.whole, home.path, valueAt(held.whole, path))) remove(held.whole, path);
}

/** A row in percent, where one of its chances stands, as chances. */
function fromPercent(whole: unknown, path: Path): void {
  const row = valueAt(whole, path.slice(0, -1));
  if (!Array.isArray(row) || !row.every((one) => typeof one === 'number')) return;
  if (sum(row) > 50)
    put(
      whole,
      path.slice(0, -1),
      row.map((one) => one / 100),
    );
}

const isBranch = (value: unknown): value is Record<PropertyKey, unknown> =>
  typeof value === 'object' && value !== null;

/** @returns whether there was a block to put it into */
function put(whole: unknown, path: Path, value: unknown): boolean {
  const owner = valueAt(whole, path.slice(0, -1));
  const key = path.at(-1);
  if (!isBranch(owner) || key === undefined) return false;
  owner[key] = value;
  return true;
}

function remove(whole: unknown, path: Path): void {
  const owner = valueAt(whole, path.slice(0, -1));
  const key = path.at(-1);
  if (isBranch(owner) && key !== undefined) delete owner[key];
}

/** The same with some ids written as they may be, wherever they stand. */
function withIds(value: unknown, ids: ReadonlySet<string>): unknown {
  const renamed = (text: string): string => {
    const [, kind = '', id = ''] = /^(cause:|tree:)?(.*)$/s.exec(text) ?? [];
    return ids.has(id) ? `${kind}${asId(id)}` : text;
  };
  if (typeof value === 'string') return renamed(value);
  if (Array.isArray(value)) return value.map((one) => withIds(one, ids));
  if (!isBranch(value)) return value;
  return Object.fromEntries(
    Object.entries(value).map(([key, one]) => [renamed(key), withIds(one, ids)]),
  );
}
