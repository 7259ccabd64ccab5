/** What became of a part: it is on the vehicle, lies by for later, or was used up in the work. */
export const partUses = ['fitted', 'spare', 'consumable'] as const;
export type PartUse = (typeof partUses)[number];

/** A part as somebody noted it; `each` is its price in their own words, `3.50` or `3,50 EUR`. */
export type Part = {
  readonly name: string;
  readonly count?: number | undefined;
  readonly each?: string | undefined;
  /** Left out where it was not said. */
  readonly use?: PartUse | undefined;
};

/** Written in place of parts where somebody says that there were none. */
export const noParts = 'none';

const line =
  /^(?:(?<count>\d{1,4})\s*[x×]\s+)?(?<name>.*?\S)(?:\s+(?:at|@)\s+(?<each>(?:\p{Sc}|[A-Z]{3})?\s?\d[\d.,'’]*(?:\s\d{3}[\d.,]*)*(?:\s?(?:\p{Sc}|[A-Z]{3}))?)(?:\s+each)?)?$/u;

const useBehind = new RegExp(
  `^(?<part>.*\\S)\\s*(?:,|\\()\\s*(?<use>${partUses.join('|')})\\)?$`,
  'i',
);

/**
 * Reads `2 x fuse link at 3.50`, with `, spare` or `(spare)` behind it; what has no count or price,
 * or is not of that form, is a name.
 */
export function readPart(text: string): Part {
  const behind = useBehind.exec(text.trim())?.groups;
  const typed = behind?.['part'] ?? text.trim();
  const { name = typed, count, each } = line.exec(typed)?.groups ?? {};
  const use = partUses.find((one) => one === behind?.['use']?.toLowerCase());
  return {
    name,
    ...(count !== undefined && { count: Number(count) }),
    ...(each !== undefined && { each }),
    ...(use !== undefined && { use }),
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

/** `2 x fuse link at 3.50 each (spare)`. */
export const partWords = ({ name, count, each, use }: Part): string =>
  [
    count === undefined ? name : `${count} x ${name}`,
    ...(each === undefined ? [] : [`at ${each}${count === undefined ? '' : ' each'}`]),
    ...(use === undefined ? [] : [`(${use})`]),
  ].join(' ');
