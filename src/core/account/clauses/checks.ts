import type { Entry } from '../../session/correct.ts';
import { isHealthy, checkIn, type Finding, type Story } from '../../session/story.ts';
import { isLook } from '../../tree/looked.ts';
import { curedBy } from '../../reason/history/cured.ts';
import { effectSentences } from './impact.ts';
import {
  correctionWords,
  findingItem,
  findingSentence,
  insistedWords,
  unsaidWords,
} from './finding-words.ts';
import { openWords } from './settled.ts';
import type { Clause, Phrasing } from './clause.ts';
import type { AccountContext } from '../context.ts';
import {
  askedThing,
  asClause,
  numberWord,
  readingWords,
  sentence,
  shownWords,
  toldFound,
} from '../words/wording.ts';

type Made = Omit<Clause, 'n' | 'at' | 'cautions'>;

/** A finding of a check on the way, with what it did to the suspects. */
export function checkClause(context: AccountContext, entry: Entry, finding: Finding): Made {
  const extra = `${insistedWords(finding)}${unsaidWords(context, finding)}${correctionWords(context, entry)}${openWords(context, context.open.get(finding.n))}`;
  return {
    kind: isQuiet(context, finding) && extra === '' ? 'quiet finding' : 'finding',
    begins: false,
    finding,
    phrase: (phrasing) =>
      [
        `${plainSentence(context, finding, phrasing)}${extra}`,
        ...effectOfAll(context, [finding], phrasing.turn),
      ].join(' '),
  };
}

function plainSentence(context: AccountContext, finding: Finding, phrasing: Phrasing): string {
  if (context.repeated.has(finding.n)) return repeatedSentence(context, finding, phrasing);
  return isFirstTrial(context, finding)
    ? trialSentence(context, finding, phrasing)
    : findingSentence(context, finding, phrasing);
}

/** The same check again, with nothing repaired between and the same result. */
function repeatedSentence({ story }: AccountContext, finding: Finding, { when }: Phrasing): string {
  const reading = readingWords(story, finding);
  const asked = askedThing(story, finding.check, finding.leg);
  const begun = when === '' ? 'The' : `${when} the`;
  return `${begun} same was done once more (${asked}): ${reading === '' ? '' : `${reading}, `}the same result.`;
}

/** Healthy, and nothing turned on it: several such may be told in one breath. */
function isQuiet(context: AccountContext, finding: Finding): boolean {
  const impact = context.impactAt(finding.n);
  if (impact === undefined || isFirstTrial(context, finding) || context.repeated.has(finding.n))
    return false;
  if (isLook(finding.check)) return false;
  return isHealthy(context.story, finding) && !impact.settles && !impact.newLeader;
}

/** The complaint's own check, the first time: the complaint is made to show itself. */
function isFirstTrial({ story }: AccountContext, { check, leg, n }: Finding): boolean {
  if (story.legs[leg]?.tree.complaint.confirm !== check) return false;
  return story.findings.find((one) => one.check === check && one.leg === leg)?.n === n;
}

function trialSentence({ story }: AccountContext, finding: Finding, { when }: Phrasing): string {
  const tried = isHealthy(story, finding)
    ? 'the complaint was looked for and did not show'
    : 'the complaint was made to show itself';
  const begun = when === '' ? sentence(tried).replace(/\.$/, '') : `${when} ${tried}`;
  return `${begun} (${testWords(story, finding)}): ${shownClause(story, finding)}.`;
}

/** The complaint's own test in brackets: as the tree tells it, else what it asks, in quotes. */
function testWords(story: Story, { check: id, leg }: Finding): string {
  const check = checkIn(story, id, leg);
  return check?.told ?? `"${check?.ask ?? ''}"`;
}

const shownClause = (story: Story, finding: Finding): string =>
  toldFound(story, finding) ?? asClause(shownWords(story, finding));

function effectOfAll(
  context: AccountContext,
  findings: readonly Finding[],
  turn: number,
): readonly string[] {
  const steps = findings.flatMap(({ n }) => context.stepAt(n) ?? []);
  return effectSentences(context.story, steps, { together: findings.length, turn });
}

/** Several healthy findings in one sentence, and what they came to together. */
export function quietSentences(
  context: AccountContext,
  findings: readonly Finding[],
  { when, turn }: Phrasing,
): string {
  const items = findings.map((finding) => findingItem(context, finding));
  const listed = `${items.slice(0, -1).join('; ')}; and ${items.at(-1)}`;
  const number = numberWord(findings.length);
  const head = (
    [
      `${number} checks in a row showed what a healthy vehicle shows`,
      `the next ${number} found nothing wrong`,
      `${number} checks came out healthy`,
    ] as const
  )[turn % 3];
  const begun = when === '' ? sentence(head ?? '').replace(/\.$/, '') : `${when} ${head}`;
  return [`${begun}: ${listed}.`, ...effectOfAll(context, findings, turn)].join(' ');
}

/** The complaint's own test after a repair. */
export function proofClause(context: AccountContext, entry: Entry, finding: Finding): Made {
  const { story } = context;
  const reading = readingWords(story, finding);
  const shown = shownClause(story, finding);
  const answer =
    reading === '' || toldFound(story, finding) === shown ? shown : `${reading} (${shown})`;
  const outcome = isHealthy(story, finding)
    ? goodWords(story, finding)
    : stillThere(context, finding);
  return {
    kind: 'proof',
    begins: false,
    finding,
    phrase: ({ when }) =>
      `${when === '' ? 'Then the' : `${when} the`} complaint's own test was repeated (${testWords(story, finding)}): ${answer}.${correctionWords(context, entry)}${openWords(context, context.open.get(finding.n))} ${outcome}`,
  };
}

/** A failed proof: of a fault whose own reading had come right it is not said that it was none. */
function stillThere({ story }: AccountContext, { n }: Finding): string {
  const repair = story.repairs.findLast((one) => one.n < n);
  const [cured] = repair === undefined ? [] : curedBy(story, repair);
  return cured === undefined
    ? 'The complaint was still there: the repair had not cured it.'
    : `The complaint was still there, although the repair had put right ${askedThing(story, cured.after.check, cured.after.leg)}: that fault was real, and it was not the only one.`;
}

/** What one good try tells: for a complaint that comes and goes it is not the end of it. */
const goodWords = ({ legs }: Story, { leg }: Finding): string =>
  (legs[leg]?.tree.complaint.tries ?? 1) > 1
    ? 'The complaint did not show.'
    : 'The complaint was gone.';
