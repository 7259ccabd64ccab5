import { isHealthy, type Finding } from '../../session/story.ts';
import { paragraph, type Block } from '../block.ts';
import { isFirstTrial } from '../clauses/checks.ts';
import type { Clause } from '../clauses/clause.ts';
import { wordCount } from '../clauses/grammar.ts';
import type { AccountContext } from '../context.ts';
import { BesideStory, type Beside } from './beside.ts';
import { marginsOf } from './margins.ts';
import { clausesOf, grouped, isLong } from './gather.ts';
import { lessonWords } from './lesson.ts';
import { isTurn } from './meaning.ts';
import { paragraphsOf } from './paragraphs.ts';
import { firstBets } from './bets.ts';
import { surprises } from './surprise.ts';
import { leftOutWords, Teller, type Measure } from './teller.ts';

/** A story of more words than this is told with less beside it. */
const mostWords = 600;

/** What the story tells, measure by measure, until it is short enough; the last is taken as it comes. */
type Level = Measure & {
  readonly beside: boolean;
  /** Checks that moved no suspect far are counted, not told. */
  readonly minor: boolean;
  /** All that is told of checks is what turned the search. */
  readonly turnsOnly: boolean;
};

const whole: Level = { named: 6, reasons: true, beside: true, minor: true, turnsOnly: false };
const levels: readonly Level[] = [
  whole,
  { ...whole, named: 3 },
  { ...whole, named: 2, beside: false },
  { ...whole, named: 1, beside: false, reasons: false },
  { ...whole, named: 1, beside: false, minor: false },
  { ...whole, named: 1, beside: false, minor: false, reasons: false },
  { named: 1, reasons: false, beside: false, minor: false, turnsOnly: true },
];

/** Of more findings than this only the shorter ways to tell them are tried. */
const manyFindings = 60;

/**
 * The way from the first check to the last as paragraphs, with pictures, long notes and words in the margin
 * where they belong; what belongs to the end stands there.
 */
export function storyBlocks(
  context: AccountContext,
  beside: readonly Beside[] = [],
): readonly Block[] {
  const clauses = clausesOf(context);
  const tried = context.story.findings.length > manyFindings ? levels.slice(-1) : levels;
  let told: readonly Block[] = [];
  for (const level of tried) {
    told = blocksAt(context, clauses, { ...level, placed: beside });
    if (wordsOf(told) <= mostWords) break;
  }
  return told;
}

/** Words of the story itself; what people noted at length is theirs. */
const wordsOf = (blocks: readonly Block[]): number =>
  blocks.reduce((sum, block) => {
    if (block.kind !== 'paragraph') return sum;
    const { text } = block;
    return sum + wordCount(typeof text === 'string' ? text : JSON.stringify(text));
  }, 0);

function blocksAt(
  context: AccountContext,
  clauses: readonly Clause[],
  level: Level & { readonly placed: readonly Beside[] },
): readonly Block[] {
  const placed = new BesideStory([...level.placed, ...marginsOf(context)]);
  const teller = new Teller(context, level, surprises(context));
  const bets = firstBets(context);
  const groups = grouped(clauses.filter((clause) => isKept(context, clause, level)));
  const parts = paragraphsOf(context, groups);
  const dropped = droppedChecks(context, clauses, level);
  const told = parts.flatMap((part, index): readonly Block[] => {
    const opening = index === 0 && bets !== '' ? `${teller.say(bets)} ` : '';
    const text = teller.paragraph(part);
    const all = part.flatMap(({ clauses: some }) => some);
    return [
      ...(text === '' && opening === '' ? [] : [paragraph(`${opening}${text}`.trim())]),
      ...all.flatMap((clause) => besideOf(clause)),
      ...placed.upTo(all.at(-1)?.n ?? 0),
    ];
  });
  const left = dropped === 0 ? [] : [leftOutWords(dropped)];
  const end = [...left, ...lessonWords(context)].map((text) => teller.say(text));
  return [
    ...told,
    ...placed.upTo(Number.MAX_SAFE_INTEGER),
    ...(end.length === 0 ? [] : [paragraph(end.join(' '))]),
    ...placed.upTo(Infinity),
  ];
}

/** A picture, or a long note in its own lines, under the paragraph that tells of it. */
function besideOf({ picture, noted }: Clause): readonly Block[] {
  if (picture !== undefined) return [picture];
  if (noted === undefined || !isLong(noted)) return [];
  return [{ kind: 'quote', lines: noted.split(/\r\n|\r|\n/) }];
}

function isKept(context: AccountContext, clause: Clause, level: Level): boolean {
  if (clause.kind === 'beside') return level.beside;
  return level.minor || !isMinor(context, clause, level);
}

/** A check that neither turned the search nor has anything else to say. */
function isMinor(context: AccountContext, { kind, finding }: Clause, level: Level): boolean {
  if (finding === undefined || (kind !== 'finding' && kind !== 'quiet finding')) return false;
  if (kind === 'quiet finding') return level.turnsOnly;
  if (isAsked(context, finding) || isTold(context, finding)) return false;
  return level.turnsOnly || isHealthy(context.story, finding) || !context.repeated.has(finding.n);
}

/** The complaint's own test, and what is read of every vehicle before the search. */
const isAsked = (context: AccountContext, finding: Finding): boolean =>
  isFirstTrial(context, finding) ||
  context.story.legs[finding.leg]?.tree.baseline.includes(finding.check) === true;

/** What turned the search, or is at odds with something found before. */
function isTold(context: AccountContext, { n }: Finding): boolean {
  const step = context.stepAt(n);
  return context.open.has(n) || (step !== undefined && isTurn(context, step));
}

const droppedChecks = (context: AccountContext, clauses: readonly Clause[], level: Level): number =>
  clauses.filter((clause) => !isKept(context, clause, level) && clause.finding !== undefined)
    .length;
