import type { Entry } from '../../session/correct.ts';
import { isHealthy, checkIn, type Finding, type Story } from '../../session/story.ts';
import { isLook } from '../../tree/looked.ts';
import { curedBy } from '../../reason/history/cured.ts';
import { correctionWords, findingSentence, insistedWords, unsaidWords } from './finding-words.ts';
import { openWords } from './settled.ts';
import type { Clause, Phrasing } from './clause.ts';
import { isTurn } from '../story/meaning.ts';
import type { AccountContext } from '../context.ts';
import {
  askedThing,
  asClause,
  causeIn,
  joined,
  numberWord,
  quoted,
  readingWords,
  sentence,
  shownWords,
  toldFound,
} from '../words/wording.ts';

type Made = Omit<Clause, 'n' | 'at'>;

/** A finding of a check on the way. */
export function checkClause(context: AccountContext, entry: Entry, finding: Finding): Made {
  const extra = extraWords(context, entry, finding);
  return {
    kind: isQuiet(context, finding) && extra === '' ? 'quiet finding' : 'finding',
    begins: false,
    finding,
    phrase: (phrasing) => {
      const plain = plainSentence(context, finding, phrasing);
      const { noted } = phrasing;
      return `${noted === undefined ? plain : `${plain.replace(/\.$/, '')} ("${quoted(noted)}").`}${extra}`;
    },
  };
}

/** What more must be said of a finding: insisted on, spent, put right afterwards, at odds with one before. */
const extraWords = (context: AccountContext, entry: Entry, finding: Finding): string =>
  [
    insistedWords(finding),
    unsaidWords(context, finding),
    correctionWords(context, entry),
    openWords(context, finding),
  ].join('');

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
  const begun = when === '' ? 'A' : `${when} a`;
  return `${begun} second try of ${asked} showed the same${reading === '' ? '' : ` (${reading})`}.`;
}

/** Healthy, with nothing to say of it but that: several such may be told in one breath. */
function isQuiet(context: AccountContext, finding: Finding): boolean {
  const step = context.stepAt(finding.n);
  if (isFirstTrial(context, finding) || context.repeated.has(finding.n)) return false;
  const check = checkIn(context.story, finding.check, finding.leg);
  // What somebody was asked, and what was only tried for a yes or no, is no thing to be in order.
  if (isLook(finding.check) || check?.told === undefined || check.kind === 'ask') return false;
  if (check.told.startsWith('whether ')) return false;
  if (step !== undefined && isTurn(context, step)) return false;
  return isHealthy(context.story, finding);
}

/** The complaint's own check, the first time: the complaint is made to show itself. */
export function isFirstTrial(
  { story }: Pick<AccountContext, 'story'>,
  { check, leg, n }: Finding,
): boolean {
  if (story.legs[leg]?.tree.complaint.confirm !== check) return false;
  return story.findings.find((one) => one.check === check && one.leg === leg)?.n === n;
}

function trialSentence(
  { story, who }: AccountContext,
  finding: Finding,
  { when }: Phrasing,
): string {
  const shown = shownClause(story, finding);
  const test = testWords(story, finding);
  const begun = `${when === '' ? '' : `${when} `}${who} put the complaint to its test, ${test}: ${shown}`;
  return isHealthy(story, finding)
    ? `${sentence(begun).replace(/\.$/, '')}, so it did not show.`
    : sentence(begun);
}

/** The complaint's own test: as the tree tells it, else what it asks, in quotes. */
export function testWords(
  story: Story,
  { check: id, leg }: Pick<Finding, 'check' | 'leg'>,
): string {
  const check = checkIn(story, id, leg);
  return check?.told ?? `"${check?.ask ?? ''}"`;
}

const shownClause = (story: Story, finding: Finding): string =>
  toldFound(story, finding) ?? asClause(shownWords(story, finding));

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
  const more = `${correctionWords(context, entry)}${openWords(context, finding)}`;
  return {
    kind: 'proof',
    begins: false,
    finding,
    phrase: ({ when }) =>
      `${when === '' ? 'Then' : when} the complaint's test, ${testWords(story, finding)}, was made again: ${answer}.${more} ${outcome}`,
  };
}

/** A failed proof: of a fault whose own reading had come right it is not said that it was none. */
function stillThere({ story }: AccountContext, { n }: Finding): string {
  const repair = story.repairs.findLast((one) => one.n < n);
  const [cured] = repair === undefined ? [] : curedBy(story, repair);
  if (repair === undefined) return 'The complaint was still there.';
  const thing = causeIn(story, repair.cause, repair.leg);
  return cured === undefined
    ? `The complaint was still there: mending ${thing} had not cured it.`
    : `The complaint was still there, although ${askedThing(story, cured.after.check, cured.after.leg)} had come right: mending ${thing} had been needed, and it was not the only fault.`;
}

/** What one good try tells: for a complaint that comes and goes it is not the end of it. */
const goodWords = ({ legs }: Story, { leg }: Finding): string =>
  (legs[leg]?.tree.complaint.tries ?? 1) > 1
    ? 'The complaint did not show.'
    : 'The complaint was gone.';

export type QuietManner = Pick<Phrasing, 'when' | 'form'> & {
  /** So many are named; the others are counted. */
  readonly most: number;
};

/** Several healthy findings in one sentence. */
export function quietSentence(
  { story }: AccountContext,
  findings: readonly Finding[],
  { when, form, most }: QuietManner,
): string {
  const things = findings.map((finding) => quietThing(story, finding));
  const left = things.length - most;
  const named =
    left > 1
      ? joined([...things.slice(0, most), `${numberWord(left)} other checks`])
      : joined(things);
  const said =
    form === 'person' || form === 'then'
      ? `nothing came to light in ${named}`
      : `${named} showed nothing wrong`;
  return sentence(when === '' ? said : `${when} ${said}`);
}

/** A healthy thing, with its reading where one was taken. */
function quietThing(story: Story, finding: Finding): string {
  const reading = readingWords(story, finding);
  const asked = askedThing(story, finding.check, finding.leg);
  return reading === '' ? asked : `${asked} (${reading})`;
}
