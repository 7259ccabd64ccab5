import { bad, good, type Parsed } from '../../problem.ts';
import type { Shop } from '../../tree/shop.ts';

/** One of the values that a fact about the vehicle can have, as typed. */
export function factValue(fact: string, typed: string, { facts }: Shop): Parsed<string> {
  const values = Object.hasOwn(facts, fact) ? facts[fact]?.values : undefined;
  if (values === undefined)
    return bad(wrongFact(`There is no fact "${fact}".`, Object.keys(facts)));
  if (Object.hasOwn(values, typed)) return good(typed);
  return bad(wrongFact(`"${fact}" cannot be "${typed}".`, Object.keys(values)));
}

/** Facts as typed, each with one of its values; the first that is wrong is told. */
export function factsFrom(
  typed: Readonly<Record<string, string>>,
  shop: Shop,
): Parsed<Record<string, string>> {
  const facts: Record<string, string> = {};
  for (const [fact, text] of Object.entries(typed)) {
    const value = factValue(fact, text, shop);
    if (value.kind === 'bad') return value;
    facts[fact] = value.value;
  }
  return good(facts);
}

const wrongFact = (message: string, offered: readonly string[]) => ({
  code: 'unknown-fact',
  message,
  mend: `Possible: ${offered.join(', ')}.`,
});
