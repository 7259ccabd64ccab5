import { parseNext } from '../way/next.ts';
import { isAlternative } from './varying.ts';
import type { WrittenCheck } from './written.ts';

/** A look as it is at one branch: without what condemns a cause that does not hang there. */
export function narrowed(look: WrittenCheck, isOn: (cause: string) => boolean): WrittenCheck {
  const { 'looks-at': looksAt, 'shows-with': rows = {}, sound, ...rest } = look;
  const results = look.results.filter(({ next }) => {
    const to = typeof next === 'string' ? parseNext(next) : undefined;
    return to?.kind !== 'cause' || isOn(to.cause);
  });
  const kept = new Set(results.map(({ id }) => id));
  const looked = looksAt?.filter(isOn) ?? [];
  return {
    ...rest,
    results,
    ...(sound !== undefined && { sound: onlyResults(sound, kept) }),
    'shows-with': Object.fromEntries(
      Object.entries(rows).flatMap(([cause, row]) =>
        isOn(cause) ? [[cause, onlyResults(row, kept)]] : [],
      ),
    ),
    ...(looked.length > 0 && { 'looks-at': looked }),
  };
}

/** Chances, or what facts choose from, without those of results that are gone. */
function onlyResults<T>(chances: T, kept: ReadonlySet<string>): T {
  if (Array.isArray(chances)) return chances.map((one: unknown) => onlyResults(one, kept)) as T;
  if (typeof chances !== 'object' || chances === null) return chances;
  if (isAlternative<unknown>(chances)) return { ...chances, is: onlyResults(chances.is, kept) };
  return Object.fromEntries(Object.entries(chances).filter(([id]) => kept.has(id))) as T;
}

/** A part of a tree with every text in it changed. */
export function mapTexts<T>(part: T, change: (text: string) => string): T {
  if (typeof part === 'string') return change(part) as T;
  if (Array.isArray(part)) return part.map((one: unknown) => mapTexts(one, change)) as T;
  if (typeof part !== 'object' || part === null) return part;
  return Object.fromEntries(
    Object.entries(part).map(([key, value]) => [key, mapTexts(value, change)]),
  ) as T;
}
