import type { Reading } from '../model.ts';
import { convert, findUnit, quantitiesOf } from '../../trade/units/units.ts';

/** What a text says of a reading, in the reading's unit: "9 V or more", "under 2 V", "4 to 10 A". */
export type Said = {
  readonly text: string;
  /** Lowest and highest; undefined where the text says none. */
  readonly low: number | undefined;
  readonly high: number | undefined;
};

const number = String.raw`(-?\d+(?:[.,]\d+)?)`;
const unit = String.raw`\s?([a-zA-Z°µΩ%/]+[23]?)?`;

/** How a stretch is said, tried in this order at each place; N is a number with its unit. */
const forms: readonly {
  readonly words: RegExp;
  readonly ends: (one: number, other: number) => Ends;
}[] = [
  {
    words: new RegExp(String.raw`^${number}${unit}\s?(?:to|-|–|and)\s?${number}${unit}`),
    ends: (one, other) => ({ low: one, high: other }),
  },
  {
    words: new RegExp(
      String.raw`^${number}${unit} (?:[a-z]+ )?or (?:more|over|above|higher)\b`,
      'i',
    ),
    ends: (one) => ({ low: one, high: undefined }),
  },
  {
    words: new RegExp(
      String.raw`^${number}${unit} (?:[a-z]+ )?or (?:less|under|below|lower)\b`,
      'i',
    ),
    ends: (one) => ({ low: undefined, high: one }),
  },
  {
    words: new RegExp(
      String.raw`^(?:over|above|past|beyond|at least|more than) ${number}${unit}`,
      'i',
    ),
    ends: (one) => ({ low: one, high: undefined }),
  },
  {
    words: new RegExp(
      String.raw`^(?:under|below|up to|at most|less than|within|no more than) ${number}${unit}`,
      'i',
    ),
    ends: (one) => ({ low: undefined, high: one }),
  },
];

type Ends = Pick<Said, 'low' | 'high'>;

type Meter = Pick<Reading, 'quantity' | 'unit'>;

/**
 * The first stretch of readings that a text names. Undefined where it names none, or a distance from
 * something else ("within 0.2 V of the posts"). `stranger` is its unit where that measures something
 * else than the reading.
 */
export function saidOf(
  text: string,
  reading: Meter,
): Said | { readonly stranger: string } | undefined {
  if (findUnit(reading.quantity, reading.unit) === undefined) return undefined;
  for (const start of text.matchAll(/(?<![\w.,])(?=[-\da-z])/gi)) {
    const rest = text.slice(start.index);
    for (const { words, ends } of forms) {
      const found = words.exec(rest);
      if (found === null) continue;
      const isApart =
        /^(?:within|under|up to)/i.test(rest) && /^ (?:of|from) /.test(rest.slice(found[0].length));
      return isApart ? undefined : toldBy(found, ends, reading);
    }
  }
  return undefined;
}

function toldBy(
  [text = '', first, firstUnit, second, secondUnit]: RegExpExecArray,
  ends: (one: number, other: number) => Ends,
  { quantity, unit: own }: Meter,
): Said | { readonly stranger: string } {
  const named = [firstUnit, secondUnit].find(
    (one) => one !== undefined && quantitiesOf(one).length > 0,
  );
  const known = named === undefined ? own : findUnit(quantity, named)?.id;
  if (known === undefined) return { stranger: named ?? '' };
  const value = (typed: string): number => convert(Number(typed.replace(',', '.')), known, own);
  return { text, ...ends(value(first ?? ''), value(second ?? first ?? '')) };
}
