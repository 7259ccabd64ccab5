import { clockTime, dateOf, secondsBetween } from '../../session/clock.ts';
import type { Block } from '../block.ts';
import type { CautionTelling } from './cautions.ts';
import { quietSentences } from '../clauses/checks.ts';
import type { Piece, Saying } from '../clauses/clause.ts';
import { closingWords, pieceOf } from '../clauses/clauses.ts';
import type { Teller } from '../context.ts';

/** Healthy findings told in one sentence; more of them get a second one. */
const mostTogether = 5;
/** Sentences' worth of pieces before a paragraph ends of itself. */
const mostPieces = 4;
/** Minutes after which the time is told again inside a paragraph. */
const tellAgain = 15;

/** Pieces that are told in one go. */
type Group = { readonly pieces: readonly [Piece, ...Piece[]] };

/** The way from the first check to the last as paragraphs, cautions before what they belong to. */
export function wayBlocks(teller: Teller, cautions: CautionTelling): readonly Block[] {
  const pieces = teller.story.entries.flatMap((entry) => pieceOf(teller, entry) ?? []);
  const telling = new Telling(teller);
  return paragraphsOf(grouped(pieces)).flatMap((paragraph): Block[] => {
    const all = paragraph.flatMap((group) => group.pieces);
    const repair = all.some(({ kind }) => kind === 'repair');
    const text = telling.paragraph(paragraph);
    return [
      ...cautions.before(
        all.flatMap((piece) => piece.cautions),
        repair,
      ),
      ...(text === '' ? [] : [{ kind: 'paragraph' as const, text }]),
      ...all.flatMap(({ picture }) => picture ?? []),
    ];
  });
}

/** Puts neighbors together that are said in one sentence. */
function grouped(pieces: readonly Piece[]): readonly Group[] {
  const groups: Group[] = [];
  for (const piece of pieces) {
    const last = groups.at(-1);
    const first = last?.pieces[0];
    const alike =
      first !== undefined &&
      first.kind === piece.kind &&
      (piece.kind === 'closing' || piece.kind === 'quiet finding');
    if (last !== undefined && alike && last.pieces.length < mostTogether && !piece.begins)
      groups.splice(-1, 1, { pieces: [...last.pieces, piece] });
    else groups.push({ pieces: [piece] });
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

const repairsBefore = ({ pieces: [{ finding }] }: Group): number => finding?.repairs ?? 0;

function isTurn(before: Group | undefined, group: Group): boolean {
  const [{ begins, finding }] = group.pieces;
  if (before === undefined || begins || before.pieces[0].kind === 'proof') return true;
  return finding !== undefined && repairsBefore(group) > 0 && before.pieces[0].finding === undefined
    ? before.pieces[0].kind !== 'other'
    : false;
}

const isFull = (paragraph: readonly Group[], { pieces: [{ kind }] }: Group): boolean =>
  paragraph.length >= mostPieces && kind !== 'other' && kind !== 'proof';

/** Says paragraph after paragraph, keeping what time was told last and whose turn a phrase is. */
class Telling {
  readonly #teller: Teller;
  #day: string;
  #told: string;
  #turn = 0;

  constructor(teller: Teller) {
    this.#teller = teller;
    this.#day = dateOf(teller.story.header.opened);
    this.#told = '';
  }

  paragraph(groups: readonly Group[]): string {
    return groups
      .map((group, index) => this.#group(group, index === 0))
      .filter((text) => text !== '')
      .join(' ');
  }

  #group({ pieces }: Group, first: boolean): string {
    const saying: Saying = { when: this.#when(pieces, first), turn: this.#turn };
    this.#turn += 1;
    const [one] = pieces;
    if (one.kind === 'closing')
      return closingWords(
        pieces.flatMap(({ closed }) => closed ?? []),
        saying,
      );
    return pieces.length === 1
      ? one.say(saying)
      : quietSentences(
          this.#teller,
          pieces.flatMap(({ finding }) => finding ?? []),
          saying,
        );
  }

  /** `At 10:48`, `From 10:48 to 11:02`, `On 2026-04-12 at 09:10`; empty where it need not be said. */
  #when(pieces: Group['pieces'], first: boolean): string {
    const [from, to] = [pieces[0].at, pieces.at(-1)?.at ?? pieces[0].at];
    const since = secondsBetween(this.#told, from);
    const far = since === undefined || Math.abs(since) >= tellAgain * 60;
    const newDay = dateOf(from) !== this.#day;
    if (!first && !far && !newDay) return '';
    this.#told = to;
    this.#day = dateOf(from);
    const day = newDay ? `On ${dateOf(from)} ` : '';
    const [start, end] = [clockTime(from), clockTime(to)];
    if (start !== end && pieces.length > 1)
      return `${day}${day === '' ? 'From' : 'from'} ${start} to ${end}`;
    return `${day}${day === '' ? 'At' : 'at'} ${start}`;
  }
}
