import type { Entry } from '../../session/correct.ts';
import { checkIn, type Finding } from '../../session/story.ts';
import { effectSentences } from './impact.ts';
import { correctionWords, findingItem, findingSentence, insistedWords } from './finding-words.ts';
import type { Piece, Saying } from './clause.ts';
import type { Teller } from '../context.ts';
import {
  askedThing,
  clause,
  isHealthy,
  numberWord,
  readingWords,
  sentence,
  shownWords,
} from '../words/wording.ts';

type Made = Omit<Piece, 'n' | 'at' | 'cautions'>;

/** A finding of a check on the way, with what it did to the suspects. */
export function checkPiece(teller: Teller, entry: Entry, finding: Finding): Made {
  const extra = `${insistedWords(finding)}${correctionWords(teller, entry)}`;
  return {
    kind: isQuiet(teller, finding) && extra === '' ? 'quiet finding' : 'finding',
    begins: false,
    finding,
    say: (saying) =>
      [
        `${plainSentence(teller, finding, saying)}${extra}`,
        ...effectOfAll(teller, [finding], saying.turn),
      ].join(' '),
  };
}

function plainSentence(teller: Teller, finding: Finding, saying: Saying): string {
  if (teller.repeated.has(finding.n)) return repeatedSentence(teller, finding, saying);
  return isFirstTrial(teller, finding)
    ? trialSentence(teller, finding, saying)
    : findingSentence(teller, finding, saying);
}

/** The same check again, with nothing repaired between and the same result. */
function repeatedSentence({ story }: Teller, finding: Finding, { when }: Saying): string {
  const reading = readingWords(finding);
  const asked = askedThing(story, finding.check, finding.leg);
  const begun = when === '' ? 'The' : `${when} the`;
  return `${begun} same was done once more (${asked}): ${reading === '' ? '' : `${reading}, `}the same result.`;
}

/** Healthy, and nothing turned on it: several such may be told in one breath. */
function isQuiet(teller: Teller, finding: Finding): boolean {
  const effect = teller.effectAt(finding.n);
  if (effect === undefined || isFirstTrial(teller, finding) || teller.repeated.has(finding.n))
    return false;
  return isHealthy(teller.story, finding) && !effect.settles && !effect.newLeader;
}

/** The complaint's own check, the first time: the complaint is made to show itself. */
function isFirstTrial({ story }: Teller, { check, leg, n }: Finding): boolean {
  if (story.legs[leg]?.tree.complaint.confirm !== check) return false;
  return story.findings.find((one) => one.check === check && one.leg === leg)?.n === n;
}

function trialSentence({ story }: Teller, finding: Finding, { when }: Saying): string {
  const ask = checkIn(story, finding.check, finding.leg)?.ask ?? '';
  const tried = isHealthy(story, finding)
    ? 'the complaint was looked for and did not show'
    : 'the complaint was made to show itself';
  const begun = when === '' ? sentence(tried).replace(/\.$/, '') : `${when} ${tried}`;
  return `${begun} ("${ask}"): ${clause(shownWords(story, finding))}.`;
}

function effectOfAll(
  teller: Teller,
  findings: readonly Finding[],
  turn: number,
): readonly string[] {
  const steps = findings.flatMap(({ n }) => teller.stepAt(n) ?? []);
  return effectSentences(teller.story, steps, { together: findings.length, turn });
}

/** Several healthy findings in one sentence, and what they came to together. */
export function quietSentences(
  teller: Teller,
  findings: readonly Finding[],
  { when, turn }: Saying,
): string {
  const items = findings.map((finding) => findingItem(teller, finding));
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
  return [`${begun}: ${listed}.`, ...effectOfAll(teller, findings, turn)].join(' ');
}

/** The complaint's own test after a repair. */
export function proofPiece(teller: Teller, entry: Entry, finding: Finding): Made {
  const { story } = teller;
  const ask = checkIn(story, finding.check, finding.leg)?.ask ?? '';
  const reading = readingWords(finding);
  const shown = clause(shownWords(story, finding));
  const answer = reading === '' ? shown : `${reading} (${shown})`;
  const outcome = isHealthy(story, finding)
    ? 'The complaint was gone.'
    : 'The complaint was still there: the repair had not cured it.';
  return {
    kind: 'proof',
    begins: false,
    finding,
    say: ({ when }) =>
      `${when === '' ? 'Then the' : `${when} the`} complaint's own test was repeated ("${ask}"): ${answer}.${correctionWords(teller, entry)} ${outcome}`,
  };
}
