import { percent } from '../../reason/history/wording.ts';
import { guessUnder, chanceBefore } from '../clauses/repairs.ts';
import { isProven, triesSoFar } from '../../session/proof.ts';
import { isHealthy, type Repaired, type Story } from '../../session/story.ts';
import { triageOf } from '../../session/triage.ts';
import { paragraph, type Block } from '../block.ts';
import { testWords } from '../clauses/checks.ts';
import { subject } from '../clauses/grammar.ts';
import { unlisted } from '../../tree/model.ts';
import type { AccountContext } from '../context.ts';
import { nameIn } from '../story/meaning.ts';
import {
  asClause,
  causeIn,
  joined,
  minuteWords,
  sentence,
  shownWords,
  toldFound,
  quoted,
} from '../words/wording.ts';
import { asFound } from './as-found.ts';
import { nextWords } from './next.ts';
import { mendedCauses, outcomeOf, partsOf, type Part } from './part.ts';
import { whichOne } from './vehicle.ts';

/** The job before its story, a paragraph for each complaint: what it was, how it showed, what it came to. */
export const complaintBlocks = (context: AccountContext): readonly Block[] =>
  partsOf(context.story).map((part) =>
    paragraph(
      [
        ...(part.first ? whichOne(context.story.header) : []),
        complaintWords(context.story, part),
        ...causeWords(context, part),
        ...endWords(context, part),
      ].join(' '),
    ),
  );

const ordinals: readonly string[] = ['first', 'second', 'third', 'fourth', 'fifth', 'sixth'];

/** The complaint in the owner's words, else the tree's title; and how it showed when it was tried. */
function complaintWords(story: Story, { complaint, tree, first, place, shown }: Part): string {
  const { said } = complaint;
  const title = `"${asClause(tree.title)}"`;
  const came =
    said === undefined
      ? first
        ? `The complaint was ${title}.`
        : `A ${ordinals[place] ?? 'further'} complaint came up on the same job, ${title}.`
      : first
        ? `Its owner said: "${quoted(said)}".`
        : `On the same job its owner had another complaint: "${quoted(said)}".`;
  if (shown === undefined) return came;
  const told = toldFound(story, shown) ?? `"${quoted(shownWords(story, shown))}"`;
  const test = testWords(story, shown);
  return isHealthy(story, shown)
    ? `${came} In its own test (${test}) it did not show: ${told}.`
    : `${came} In its own test (${test}) ${told}.`;
}

/** What was found, in the person's own words where they noted it; nothing where a tree only sorts. */
function causeWords(context: AccountContext, part: Part): readonly string[] {
  const { story } = context;
  const mended = mendedCauses(part);
  switch (outcomeOf(story, part)) {
    case 'inspection':
      return [];
    case 'proven':
      return [`The cause: ${causesAsFound(story, mended)}.`, ...notSure(context, part)];
    case 'tried':
      return mended.length === 0
        ? [openCause(context, part)]
        : [sentence(`suspected ${stoodWords(context, part, mended)}`)];
    case 'named':
      return [
        `What was found led to ${causesAsFound(story, part.named.slice(-1))}, not mended yet.`,
      ];
    case 'went away':
      return [
        part.shown !== undefined && isHealthy(story, part.shown)
          ? 'Its cause is not known.'
          : 'It went away by itself and is not explained.',
      ];
    case 'open':
      return [openCause(context, part)];
  }
}

const causesAsFound = (story: Story, causes: readonly string[]): string =>
  joined(causes.map((id) => asFound(story, id)));

/** Suspects that were mended without a proof, each with what it stood at. */
function stoodWords(context: AccountContext, part: Part, causes: readonly string[]): string {
  return joined(
    causes.map((id) => {
      const repair = part.repairs.findLast(({ cause }) => cause === id);
      const chance = repair && chanceBefore(context, repair.n, id);
      const stood = chance === undefined ? '' : ` (${percent(chance)})`;
      return `${asFound(context.story, id)}${stood}`;
    }),
  );
}

/** Cured, with another suspect as likely as what was mended, or that one a guess: told so. */
function notSure(context: AccountContext, part: Part): readonly string[] {
  const [repair] = part.repairs.slice(-1);
  if (repair === undefined) return [];
  const before = context.history.findLast(
    ({ n, leg }) => n < repair.n && leg === repair.leg,
  )?.after;
  const chance = before?.get(repair.cause);
  if (before === undefined || chance === undefined || chance >= guessUnder) return [];
  const rivals = [...before]
    .filter(([id, other]) => id !== repair.cause && other >= Math.max(chance / 2, 0.1))
    .toSorted(([, one], [, other]) => other - one)
    .slice(0, 2)
    .map(([id, other]) => `${nameIn(context, id, repair.leg)} (${percent(other)})`);
  return rivals.length === 0
    ? []
    : [`The cause is not certain: when it was mended ${subject(rivals)} not ruled out.`];
}

/** How likely a suspect must be for the opening to name it where no cause was found. Our own judgment. */
const telling = 0.25;

function openCause(context: AccountContext, part: Part): string {
  const after = context.history.findLast(({ leg }) => part.complaint.legs.includes(leg))?.after;
  const [leader, second] = [...(after ?? [])].toSorted((one, two) => two[1] - one[1]);
  if (leader === undefined || leader[1] < telling) return 'No cause was found for it.';
  const name = (one: readonly [string, number]): string =>
    `${nameIn(context, one[0], part.complaint.legs.at(-1) ?? part.leg)} (${percent(one[1])})`;
  if (leader[0] === unlisted)
    return `No cause is proven; what was found fits no listed cause well (something else: ${percent(leader[1])}).`;
  const also = second !== undefined && second[1] >= telling / 2 ? `, then for ${name(second)}` : '';
  return `No cause is proven; what was found speaks most for ${name(leader)}${also}.`;
}

/** What was done, and what that came to. */
function endWords(context: AccountContext, part: Part): readonly string[] {
  const { story } = context;
  const triage = triageOf(story);
  if (triage !== undefined) return [forInspection(story, triage)];
  const done = part.repairs.map((repair) => doneWords(story, repair));
  const failed = part.repairs.map((repair) => part.failed.includes(repair));
  const said = done.map((words, index) =>
    failed[index] === true ? `${words}, which did not cure it` : words,
  );
  return [
    ...(said.length === 0
      ? nothingDone(story, part)
      : [sentence(said.join('; then ')), proofWords(story, part)]),
    ...(part.last ? nextWords(context, part) : []),
  ];
}

const doneWords = (story: Story, { cause, did, leg, minutes }: Repaired): string => {
  const what =
    did === undefined ? `${subject([causeIn(story, cause, leg)])} mended` : asClause(did);
  return minutes === undefined ? what : `${what} (${minuteWords(minutes)})`;
};

function nothingDone(story: Story, part: Part): readonly string[] {
  if (outcomeOf(story, part) === 'went away') return [];
  return [
    part.last
      ? 'Nothing was repaired.'
      : 'Nothing was repaired for it before the next complaint was taken up.',
  ];
}

/** What a tree that only sorts comes to, whatever was found or done: nothing of it is proven. */
function forInspection({ closed, repairs }: Story, triage: string): string {
  const handed = closed?.as === 'handed-on' ? 'Handed to inspection' : 'Still to be inspected';
  const mended = repairs.length === 0 ? 'Nothing was repaired.' : 'No repair in it is proven.';
  return `${handed}: ${triage} ${mended}`;
}

/** Whether the last repair stood the complaint's own test, or that of the complaint it was led to. */
function proofWords(story: Story, part: Part): string {
  const { told, repairs } = part;
  const { tree } = told.legs.at(-1) ?? part;
  const test =
    tree.id === part.tree.id ? "the complaint's own test" : `the test of "${asClause(tree.title)}"`;
  const soFar = triesSoFar(told);
  if (soFar !== undefined) return `Not proven yet: ${soFar}.`;
  const proof = told.proofs.at(-1);
  const shown = proof && (toldFound(story, proof) ?? asClause(shownWords(story, proof)));
  if (isProven(told)) {
    const tries = tree.complaint.tries > 1 ? `, ${tree.complaint.tries} times in a row` : '';
    return `Proved by ${test}: ${shown ?? 'it passed'}${tries}.${firstTest(story, part)}`;
  }
  const tried = told.proofs.some(({ n }) => n > (repairs.at(-1)?.n ?? 0));
  return tried
    ? `It is not proven: ${test} still failed after the last repair (${shown ?? 'it showed'}).`
    : `It is not proven: ${test} was not repeated after the last repair.`;
}

/** Led to another complaint and proved there, the first one's own test may still be owed. */
function firstTest(story: Story, { told, tree, repairs, shown }: Part): string {
  if (shown === undefined || told.legs.at(-1)?.tree.id === tree.id) return '';
  const mended = repairs.at(-1)?.n ?? 0;
  const again = story.findings.some(({ n, check }) => n > mended && check === shown.check);
  return again
    ? ''
    : ` ${sentence(`its first test, ${testWords(story, shown)}, was not made again`)}`;
}
