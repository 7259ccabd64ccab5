/** A part as somebody noted it; `each` is its price in their own words, `3.50` or `3,50 EUR`. */
export type Part = { readonly name: string; readonly count?: number; readonly each?: string };

/** Written in place of parts where somebody says that there were none. */
export const noParts = 'none';

const line =
  /^(?:(?<count>\d{1,4})\s*[x×]\s+)?(?<name>.*?\S)(?:\s+(?:at|@)\s+(?<each>\p{Sc}?\s?\d[\d.,]*(?:\s?(?:\p{Sc}|[A-Z]{3}))?)(?:\s+each)?)?$/u;

/** Reads `2 x fuse link at 3.50`; what has no count or price, or is not of that form, is a name. */
export function readPart(text: string): Part {
  const { name = text.trim(), count, each } = line.exec(text.trim())?.groups ?? {};
  return {
    name,
    ...(count !== undefined && { count: Number(count) }),
    ...(each !== undefined && { each }),
  };
}

/** Parts typed on one line, parted by semicolons. */
export const splitParts = (text: string): readonly string[] =>
  text
    .split(';')
    .map((part) => part.trim())
    .filter((part) => part !== '');

/** Whether it was said that there were no parts. */
export const saysNone = (parts: readonly string[]): boolean =>
  parts.length === 1 && parts[0]?.toLowerCase() === noParts;

/** What is not noted is said to be so: nobody was there to say that there were none. */
export const notNoted = 'not noted';

/** Parts in words: `2 x fuse link at 3.50 each; tape`, `none`, or `not noted`. */
export function partsWords(parts: readonly string[]): string {
  if (parts.length === 0) return notNoted;
  return saysNone(parts) ? noParts : parts.map((part) => partWords(readPart(part))).join('; ');
}

const partWords = ({ name, count, each }: Part): string =>
  [
    count === undefined ? name : `${count} x ${name}`,
    ...(each === undefined ? [] : [`at ${each}${count === undefined ? '' : ' each'}`]),
  ].join(' ');
