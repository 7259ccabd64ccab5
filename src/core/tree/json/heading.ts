import { closes, kind, opens, tokensOf, type Token } from './tokens.ts';

/** What a tree calls itself. */
export type Heading = {
  readonly id: string;
  readonly title: string;
  readonly group?: string;
};

/**
 * Reads the id, the title and the group of a tree from the beginning of its text, without the rest of it: a
 * list of many trees needs no more. Nothing else in the text is judged.
 * @returns undefined where the two do not both stand there
 */
export function headingOf(start: string): Heading | undefined {
  const { id, title, group } = topTexts(start, ['id', 'title', 'group']);
  if (id === undefined || title === undefined) return undefined;
  return { id, title, ...(group !== undefined && { group }) };
}

/** The texts that stand under some keys of the outermost object, as far as the text goes. */
function topTexts<K extends string>(start: string, keys: readonly K[]): Partial<Record<K, string>> {
  const found: Partial<Record<K, string>> = {};
  for (const [key, value] of topPairs(start)) {
    const wanted = keys.find((one) => one === key);
    if (wanted !== undefined) found[wanted] = value;
    if (keys.every((one) => found[one] !== undefined)) break;
  }
  return found;
}

/** Each key of the outermost object with its value, where that is a whole text. */
function* topPairs(start: string): Generator<readonly [key: string, value: string]> {
  let depth = 0;
  let last: readonly Token[] = [];
  for (const token of tokensOf(start)) {
    const [key, colon] = last;
    const isText = token.kind === kind.text && !token.torn && depth === 1;
    if (isText && key !== undefined && colon?.kind === kind.colon) yield [key.value, token.value];
    if (depth === 0 && token.kind === kind.openBracket) return;
    if (opens(token)) depth += 1;
    if (closes(token)) depth -= 1;
    last = [...last.slice(-1), token];
  }
}
