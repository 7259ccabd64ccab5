import { causeLines, type Draft, type DraftCheck, type Rows } from './draft.ts';

/** What stands of a tree, a line each. */
export function soFar(draft: Draft): readonly string[] {
  const { title, say, test, causes, checks } = draft;
  if (title === undefined) return ['Nothing yet.'];
  return [
    title,
    ...(say === undefined ? [] : [`The owner says: ${say}`]),
    ...(test === undefined ? [] : [`Test: ${checkLine(test)}`]),
    ...(causes.length === 0 ? [] : ['Causes:', ...causeLines(draft)]),
    ...(checks.length === 0 ? [] : ['Checks:']),
    ...checks.map(
      (check, index) => `${index + 1} ${checkLine(check)}; shows ${rowWords(check.rows, draft)}`,
    ),
  ];
}

const checkLine = ({ ask, results, work }: DraftCheck): string =>
  `${ask} (${results.map(({ label }) => label).join(', ')}; ${work.minutes} min)`;

function rowWords(rows: Rows, { causes }: Draft): string {
  const words = Object.entries(rows).map(([id, shares]) => {
    const number = causes.findIndex((cause) => cause.id === id) + 1;
    return `${number} ${Object.entries(shares)
      .map((pair) => pair.join(' '))
      .join(' ')}`;
  });
  return words.length === 0 ? 'no cause' : words.join(', ');
}
