import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { checkTree } from '../../../../src/core/reason/plan/check-tree.ts';
import { asText } from '../../../../src/core/telling/forms.ts';
import { tellTree } from '../../../../src/core/telling/tell.ts';
import { fileOfDraft } from '../../../../src/core/tree/writing/file.ts';
import { nextQuestion } from '../../../../src/core/tree/writing/next-question.ts';
import { shippedShop } from '../../../helpers/library.ts';

const shop = shippedShop();
const answersOf = (name: string): readonly string[] =>
  readFileSync(`tests/fixtures/authoring/${name}.answers`, 'utf8').split('\n').slice(0, -1);

function draftOf(name: string) {
  const stand = nextQuestion(answersOf(name), shop);
  if (stand.kind === 'bad' || stand.value.kind !== 'whole') throw new Error('not told to the end');
  return stand.value.draft;
}

test.each(['horn', 'wiper-still'])(
  'the tree that was asked for, %s, is clean, walked and told',
  (name) => {
    const draft = draftOf(name);
    const text = JSON.stringify(fileOfDraft(draft, name));

    const { tree, problems } = checkTree(text, { file: `${name}.json`, shop, trees: [] });

    expect(problems).toEqual([]);
    if (tree === undefined) throw new Error('no tree');
    const told = asText(tellTree(tree, shop));
    for (const { name: cause } of draft.causes) expect(told).toContain(cause);
  },
);

/** Questions whose answers are sentences; in the others each number and word counts. */
const sentences =
  /complaint, in a few|owner say|what does it ask|Step \d|where on the|show itself|to be bought/;

/** Numbers and words beyond names and sentences: of a cause its odds, of results their limits. */
function countTyped(text: string, line: string): number {
  if (sentences.test(text)) return 0;
  if (/^Cause \d/.test(text)) return /\d+$/.test(line) ? 1 : 0;
  if (text.startsWith('What may it show')) return (line.match(/\d[\d.]*/g) ?? []).length;
  return line.split(/[\s,+]+/).filter((word) => word !== '').length;
}

test('nine causes and eleven checks take at most sixty numbers and words beyond names', () => {
  const answers = answersOf('wiper-still');
  const draft = draftOf('wiper-still');

  const typed = answers.map((line, index) => {
    const stand = nextQuestion(answers.slice(0, index), shop);
    if (stand.kind === 'bad' || stand.value.kind !== 'asks') throw new Error('nothing is asked');
    return countTyped(stand.value.question.text, line);
  });

  expect([draft.causes.length, draft.checks.length]).toEqual([9, 11]);
  expect(typed.reduce((all, one) => all + one, 0)).toBeLessThanOrEqual(60);
});
