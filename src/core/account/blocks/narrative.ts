import { clockTime, dateOf, secondsBetween } from '../../session/clock.ts';
import { paragraph, type Block } from '../block.ts';
import type { ToldCautions } from './cautions.ts';
import { quietSentences } from '../clauses/checks.ts';
import type { Clause, Phrasing } from '../clauses/clause.ts';
import { closingWords, takenWords } from '../clauses/apart.ts';
import { clauseOf } from '../clauses/clauses.ts';
import type { AccountContext } from '../context.ts';

/** Healthy findings told in one sentence; more of them get a second one. */
const mostTogether = 5;
/** Sentences' worth of clauses before a paragraph ends of itself. */
const mostClauses = 4;
/** Minutes after which the time is told again inside a paragraph. */
const tellAgain = 15;

/** Clauses that are told in one go. */
type Group = { readonly clauses: readonly [Clause, ...Clause[]] };

/** The way from the first check to the last as paragraphs, cautions before what they belong to. */
export function wayBlocks(context: AccountContext, cautions: ToldCautions): readonly Block[] {
  const clauses = context.story.entries
    .flatMap((entry) => clauseOf(context, entry) ?? [])
    .filter(({ kind }) => kind !== 'aside');
  const narrator = new Narrator(context);
  return paragraphsOf(grouped(clauses)).flatMap((groups): Block[] => {
    const all = groups.flatMap((group) => group.clauses);
    const inFull = all.some(({ kind, whole }) => kind === 'repair' || whole === true);
    const text = narrator.paragraph(groups);
    return [
      ...cautions.before(
        all.flatMap((clause) => clause.cautions),
        inFull,
      ),
      ...(text === '' ? [] : [paragraph(text)]),
      ...all.flatMap(({ picture }) => picture ?? []),
    ];
  });
}

/** Puts neighbors together that are said in one sentence. */
function grouped(clauses: readonly Clause[]): readonly Group[] {
  const groups: Group[] = [];
  for (const clause of clauses) {
    const last = groups.at(-1);
    const first = last?.clauses[0];
    const alike =
      first !== undefined &&
      first.kind === clause.kind &&
      ['taking off', 'closing', 'quiet finding'].includes(clause.kind);
    const most = clause.kind === 'quiet finding' ? mostTogether : Infinity;
    if (last !== undefined && alike && last.clauses.length < most && !clause.begins)
      groups.splice(-1, 1, { clauses: [...last.clauses, clause] });
    else groups.push({ clauses: [clause] });
  }
  return groups;
}

/** A repair begins a paragraph, the checks after it another, and what follows a proof a third. */
function paragraphsOf(groups: readonly Group[]): readonly (readonly Group[])[] {
  const paragraphs: Group[][] = [];
  for (const [index, group] of groups.entries()) {
    const current = paragraphs.at(-1);
    const before = groups[index - 1];
    if (current === undefined || isTurn(before, group) || isFull(current, group))
      paragraphs.push([group]);
    else current.push(group);
  }
  return paragraphs;
}

const repairsBefore = ({ clauses: [{ finding }] }: Group): number => finding?.repairs ?? 0;

function isTurn(before: Group | undefined, group: Group): boolean {
  const [{ begins, finding }] = group.clauses;
  if (before === undefined || begins || before.clauses[0].kind === 'proof') return true;
  return finding !== undefined &&
    repairsBefore(group) > 0 &&
    before.clauses[0].finding === undefined
    ? !isBeside(before.clauses[0])
    : false;
}

/** What is said beside the findings ends no paragraph. */
const isBeside = ({ kind }: Clause): boolean => kind === 'other' || kind === 'taking off';

const isFull = (paragraph: readonly Group[], { clauses: [first] }: Group): boolean =>
  paragraph.length >= mostClauses && !isBeside(first) && first.kind !== 'proof';

/** Says paragraph after paragraph, keeping what time was told last and whose turn a phrase is. */
class Narrator {
  readonly #context: AccountContext;
  #day: string;
  #told: string;
  #turn = 0;

  constructor(context: AccountContext) {
    this.#context = context;
    this.#day = dateOf(context.story.header.opened);
    this.#told = '';
  }

  paragraph(groups: readonly Group[]): string {
    return groups
      .map((group, index) => this.#group(group, index === 0))
      .filter((text) => text !== '')
      .join(' ');
  }

  #group({ clauses }: Group, first: boolean): string {
    const phrasing: Phrasing = { when: this.#when(clauses, first), turn: this.#turn };
    this.#turn += 1;
    const [one] = clauses;
    if (one.kind === 'taking off')
      return takenWords(
        this.#context.who,
        clauses.flatMap(({ taken }) => taken ?? []),
        phrasing,
      );
    if (one.kind === 'closing')
      return closingWords(
        clauses.flatMap(({ closed }) => closed ?? []),
        phrasing,
      );
    // Its caption stands under it.
    if (one.picture !== undefined) return '';
    return clauses.length === 1
      ? one.phrase(phrasing)
      : quietSentences(
          this.#context,
          clauses.flatMap(({ finding }) => finding ?? []),
          phrasing,
        );
  }

  /** `At 10:48`, `From 10:48 to 11:02`, `On 2026-04-12 at 09:10`; empty where it need not be said. */
  #when(clauses: Group['clauses'], first: boolean): string {
    const [from, to] = [clauses[0].at, clauses.at(-1)?.at ?? clauses[0].at];
    const since = secondsBetween(this.#told, from);
    const far = since === undefined || Math.abs(since) >= tellAgain * 60;
    const newDay = dateOf(from) !== this.#day;
    if (!first && !far && !newDay) return '';
    this.#told = to;
    this.#day = dateOf(from);
    const day = newDay ? `On ${dateOf(from)} ` : '';
    const [start, end] = [clockTime(from), clockTime(to)];
    if (start !== end && clauses.length > 1)
      return `${day}${day === '' ? 'From' : 'from'} ${start} to ${end}`;
    return `${day}${day === '' ? 'At' : 'at'} ${start}`;
  }
}
