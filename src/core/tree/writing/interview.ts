import { good, type Parsed } from '../../problem.ts';
import { readNumber } from '../../trade/units/number.ts';
import { longest } from '../lint/texts.ts';
import type { Shop } from '../shop.ts';
import { causeLines, type Draft, type DraftCause, type DraftCheck } from './draft.ts';
import { complaintRows, readMarks } from './marks.ts';
import { idFor } from './names.ts';
import { ask, notUnderstood, textOf, type Asking } from './question.ts';
import { askResults } from './results.ts';
import { askWay } from './way.ts';
import { askCautions, askParts, askSteps, askWork, guessCheck, guessRepair } from './work.ts';

/**
 * The whole conversation, from the complaint to the way. The draft grows as it goes, so that what
 * stands can be shown at any point.
 */
export function* interview(draft: Draft, shop: Shop): Asking<Draft> {
  draft.title = yield* ask({
    text: 'What is the complaint, in a few words?',
    may: 'The title of the tree.',
    example: 'The horn is silent',
    read: textOf(60),
  });
  draft.say = yield* ask({
    text: 'How does the owner say it?',
    may: 'A sentence in the words of the owner.',
    example: 'I press the button and nothing sounds.',
    read: textOf(),
  });
  draft.test = yield* askTest(shop);
  yield* askCauses(draft);
  for (const index of draft.causes.keys()) yield* describeCause(draft, index, shop);
  draft.test = { ...draft.test, rows: yield* askTestRows(draft.test, draft) };
  while (yield* askCheck(draft, shop));
  draft.way = yield* askWay(draft);
  return draft;
}

function* askTest(shop: Shop): Asking<DraftCheck> {
  const question = yield* ask({
    text: 'The test that shows the complaint, and proves the repair. What does it ask?',
    may: 'A question that can be answered by looking, listening or trying.',
    example: 'Does the horn sound?',
    read: textOf(longest.ask),
  });
  return yield* askCheckBody({ question, id: idFor(question, []), shop, isTest: true });
}

type Body = {
  readonly question: string;
  readonly id: string;
  readonly shop: Shop;
  readonly isTest: boolean;
};

function* askCheckBody({ question, id, shop, isTest }: Body): Asking<DraftCheck> {
  const how = yield* askSteps('How is it done? Step 1.', 'Press three times, wheel straight.');
  const shown = yield* askResults(question);
  const words = [question, ...how].join(' ');
  const guessed = guessCheck(words, shown, shop);
  const work = yield* askWork(
    isTest && shown.reading === undefined ? { ...guessed, kind: 'try' } : guessed,
    shop,
  );
  const texts = [question, ...how, ...shown.results.map(({ label }) => label)];
  const cautions = yield* askCautions(texts, work.standing, shop);
  return { id, ask: question, how, ...shown, work, cautions, rows: {} };
}

/** Asks for causes with their odds, likeliest first or in any order, until an empty line. */
function* askCauses(draft: Draft): Asking<void> {
  for (;;) {
    const number = draft.causes.length + 1;
    const cause = yield* ask({
      text: `Cause ${number}: its name, and how many of a hundred such vehicles have it.${number > 2 ? ' Enter when that is all.' : ''}`,
      may: 'A name and a number behind it. The numbers need not add up to a hundred: they are scaled.',
      example: 'Horn fuse burnt 40',
      ...(number > 2 && { offered: '' }),
      read: (line) => readCause(line, draft),
    });
    if (cause === undefined) break;
    draft.causes = [...draft.causes, cause];
  }
  draft.unlisted = yield* ask({
    text: 'And how many of a hundred have something that is not on this list?',
    may: 'A number on the same scale.',
    example: '10',
    offered: '5',
    read: numberWithin(0, 1000),
  });
}

function readCause(line: string, { causes }: Draft): Parsed<DraftCause | undefined> {
  if (line === '') return good(undefined);
  const [, name = '', number = ''] = /^(.*?)[\s,:]+(\d+(?:[.,]\d+)?)\s*%?$/.exec(line) ?? [];
  const odds = readNumber(number)?.value;
  if (name === '' || odds === undefined || odds <= 0)
    return notUnderstood(
      'There is no number of vehicles behind the name.',
      'Write: Horn fuse burnt 40.',
    );
  if (name.length > 60)
    return notUnderstood(`The name has ${name.length} characters; there is room for 60.`);
  if (causes.some((one) => one.name.toLowerCase() === name.toLowerCase()))
    return notUnderstood(`"${name}" stands on the list already.`);
  const id = idFor(
    name,
    causes.map((one) => one.id),
  );
  return good({ id, name, odds });
}

function numberWithin(least: number, most: number) {
  return (line: string): Parsed<number> => {
    const found = readNumber(line.replace(/%$/, ''));
    if (found === undefined || found.rest !== '')
      return notUnderstood(`"${line}" is not a number.`);
    return found.value >= least && found.value <= most
      ? good(found.value)
      : notUnderstood(`${found.value} is not between ${least} and ${most}.`);
  };
}

function* describeCause(draft: Draft, index: number, shop: Shop): Asking<void> {
  const cause = draft.causes[index];
  if (cause === undefined) return;
  const list = index === 0 ? causeLines(draft) : [];
  const { name } = cause;
  const where = yield* ask({
    text: `${name}: where on the vehicle is it?`,
    ...(list.length > 0 && { list }),
    may: 'A place, in a few words.',
    example: 'Fuse box',
    read: textOf(80),
  });
  const shows = yield* ask({
    text: `${name}: how does it show itself?`,
    may: 'What a mechanic would notice.',
    example: 'Other things on the same fuse are dead too.',
    read: textOf(),
  });
  const steps = yield* askSteps(`${name}: how is it put right? Step 1.`, 'New fuse, same size.');
  const taken = yield* askWork(guessRepair(steps.join(' ')), shop);
  const work = { ...taken, parts: yield* askParts() };
  const cautions = yield* askCautions(steps, work.standing, shop);
  const whole: DraftCause = { ...cause, where, shows, steps, work, cautions };
  draft.causes = draft.causes.map((one, place) => (place === index ? whole : one));
}

function* askTestRows(
  { results, ask: question }: DraftCheck,
  draft: Draft,
): Asking<DraftCheck['rows']> {
  const of = { causes: draft.causes, results };
  const bad = results.slice(1).map(({ label }) => label);
  const marked = yield* ask({
    text: `"${question}" With each cause alone, what does it show? Enter: ${bad.length === 1 ? `always "${bad[0] ?? ''}"` : 'any of the bad results, each as often'}.`,
    list: [...causeLines(draft), `Results: ${results.map(({ label }) => label).join(', ')}`],
    may: 'Only where it is otherwise: the number of a cause, the result, and how often (always, mostly, half, seldom, never or a percent); commas between.',
    example: bad.length === 1 ? '2 mostly' : `1 ${bad[0] ?? ''} mostly, 2+3 ${bad.at(-1) ?? ''}`,
    offered: 'none',
    read: (line) => readMarks(line, of),
  });
  return complaintRows(marked, of);
}

/** Asks for one check; false when there is no further one. */
function* askCheck(draft: Draft, shop: Shop): Asking<boolean> {
  const number = draft.checks.length + 1;
  const question = yield* ask({
    text: `Check ${number}, the cheap and telling ones first: what does it ask?${number > 1 ? ' Enter when that is all.' : ''}`,
    may: `A question or what is measured, in at most ${longest.ask} characters.`,
    example: 'Is the horn fuse whole?',
    ...(number > 1 && { offered: '' }),
    read: textOf(longest.ask),
  });
  if (question === '') return false;
  const taken = [draft.test, ...draft.checks].flatMap((check) =>
    check === undefined ? [] : [check.id],
  );
  const body = yield* askCheckBody({ question, id: idFor(question, taken), shop, isTest: false });
  const rows = yield* askRows(body, draft);
  const sound = yield* ask({
    text: 'Of a hundred sound vehicles, on how many would this look bad?',
    may: 'A number; 3 where you do not know.',
    example: '10',
    offered: '3',
    read: numberWithin(0, 60),
  });
  draft.checks = [...draft.checks, { ...body, rows, sound }];
  return true;
}

function* askRows(
  { results, ask: question }: DraftCheck,
  draft: Draft,
): Asking<DraftCheck['rows']> {
  const bad = results.slice(1).map(({ label }) => label);
  return yield* ask({
    text: `"${question}" Which causes would this show?`,
    list: [...causeLines(draft), `Results: ${results.map(({ label }) => label).join(', ')}`],
    may: 'Numbers of causes with how often (always, mostly, half, seldom or a percent; no word means always), commas between; with more than one bad result, which.',
    example: bad.length === 1 ? '1, 2+3 mostly' : `1 ${bad.at(-1) ?? ''}, 2 ${bad[0] ?? ''} mostly`,
    read: (line) => readMarks(line, { causes: draft.causes, results }),
  });
}
