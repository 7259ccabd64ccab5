/** A time that words speak of: how long it is, and the words that say what it is for. */
export type Spell = { readonly seconds: number; readonly label: string };

const numbers: Readonly<Record<string, number>> = {
  a: 1,
  an: 1,
  one: 1,
  two: 2,
  three: 3,
  four: 4,
  five: 5,
  six: 6,
  eight: 8,
  ten: 10,
  fifteen: 15,
  twenty: 20,
  thirty: 30,
  forty: 40,
  'half an': 0.5,
  'half a': 0.5,
};

const units = { s: 1, min: 60, h: 3600 } as const;

const spell = new RegExp(
  String.raw`(?<![\p{L}\d.,/-])(?<many>\d+(?:[.,]\d+)?|${Object.keys(numbers).toReversed().join('|')})(?:\s*(?:to|-|or)\s*\d+)?(?:\s|-)*(?<unit>s|secs?|seconds?|m|mins?|minutes?|h|hrs?|hours?)(?![\p{L}\d])`,
  'giu',
);

/** Words right before a time that make it no wait: a limit to be kept under, or a place in a row. */
const noWait = /(?:within|at most|under|less than|first|per|the|every|each)\s*$/i;

/**
 * The times that words speak of, in their order: `15 minutes`, `30 s`, `4 h`, `half an hour`, of a range
 * the shorter (`10 to 20 min`: from then on it is as asked). "A second person" is nobody's time.
 * @returns seconds, with the sentence each stands in
 */
export const spellsIn = (text: string): readonly Spell[] =>
  timesIn(text).map(({ seconds, at }) => ({ seconds, label: sentenceAt(text, at) }));

type Time = { readonly seconds: number; readonly at: number; readonly length: number };

const timesIn = (text: string): readonly Time[] =>
  [...text.matchAll(spell)].flatMap((match) => {
    const { many = '', unit = '' } = match.groups ?? {};
    const count = numbers[many.toLowerCase()] ?? Number(many.replace(',', '.'));
    const size = units[unitOf(unit)];
    const personal = size === 1 && /^an?$/i.test(many);
    if (personal || noWait.test(text.slice(0, match.index)) || !(count > 0)) return [];
    return [{ seconds: Math.round(count * size), at: match.index, length: match[0].length }];
  });

const unitOf = (word: string): keyof typeof units =>
  /^s/i.test(word) ? 's' : /^m/i.test(word) ? 'min' : 'h';

/** The part of the text between full stops, semicolons and colons that a place lies in. */
function sentenceAt(text: string, at: number): string {
  const start = Math.max(...['. ', '; ', ': '].map((end) => text.lastIndexOf(end, at) + 1));
  const rest = text.slice(at).search(/[.;:](?:\s|$)/);
  return text.slice(Math.max(0, start), rest < 0 ? text.length : at + rest).trim();
}

/** Shorter than this nobody sets a timer: the hand is on the key. */
const shortest = 10;

/** The waits that the steps of a check or a repair speak of, each once, in their order. */
export function waitsIn(steps: readonly string[]): readonly Spell[] {
  const all = steps.flatMap(spellsIn).filter(({ seconds }) => seconds >= shortest);
  return all.filter(
    (one, index) => all.findIndex(({ seconds }) => seconds === one.seconds) === index,
  );
}

/** A timer as typed: `15 min charge`, `soak 4 h`, or minutes alone before what it is for: `20 soak`. */
export function parseTimer(text: string): Spell | undefined {
  const [first] = timesIn(text);
  if (first !== undefined) {
    const rest = `${text.slice(0, first.at)} ${text.slice(first.at + first.length)}`;
    return { seconds: first.seconds, label: tidy(rest) };
  }
  const bare = /^(?<minutes>\d{1,4}(?:[.,]\d+)?)(?:\s+(?<label>\D.*))?$/.exec(text.trim())?.groups;
  const minutes = Number(bare?.['minutes']?.replace(',', '.'));
  return minutes > 0
    ? { seconds: Math.round(minutes * 60), label: tidy(bare?.['label'] ?? '') }
    : undefined;
}

const tidy = (label: string): string => {
  const words = label.replaceAll(/\s+/g, ' ').replaceAll(/^[\s,:-]+|[\s,:-]+$/g, '');
  return words === '' ? 'timer' : words;
};

/** `30 s`, `15 min`, `1 h 30 min`. */
export function spellWords(seconds: number): string {
  if (seconds < 60) return `${seconds} s`;
  const [hours, minutes, rest] = [
    Math.floor(seconds / 3600),
    Math.floor((seconds % 3600) / 60),
    seconds % 60,
  ];
  return [
    ...(hours > 0 ? [`${hours} h`] : []),
    ...(minutes > 0 ? [`${minutes} min`] : []),
    ...(rest > 0 && hours === 0 ? [`${rest} s`] : []),
  ].join(' ');
}
