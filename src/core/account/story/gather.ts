import { secondsBetween } from '../../session/clock.ts';
import { clauseOf } from '../clauses/clauses.ts';
import type { Clause } from '../clauses/clause.ts';
import type { AccountContext } from '../context.ts';

/** Clauses that are told in one go. */
export type Group = { readonly clauses: readonly [Clause, ...Clause[]] };

/** Seconds within which a note tells of what was found or named beside it. Our own judgment. */
export const noteBelongs = 180;
/** A note longer than this, or of several lines, stands by itself. */
const longNote = 160;

export const isLong = (text: string): boolean => text.length > longNote || text.includes('\n');

/** All that the story tells, a short note with the finding it belongs to. */
export function clausesOf(context: AccountContext): readonly Clause[] {
  const told = context.story.entries
    .flatMap((entry) => clauseOf(context, entry) ?? [])
    .filter(({ kind }) => kind !== 'aside');
  return told.reduce<Clause[]>((list, clause) => {
    const last = list.at(-1);
    if (last !== undefined && isNoteOf(clause, last)) list.splice(-1, 1, withNote(last, clause));
    else list.push(clause);
    return list;
  }, []);
}

function isNoteOf({ kind, noted = '', at }: Clause, last: Clause): boolean {
  const finds = last.kind === 'finding' || last.kind === 'quiet finding';
  if (kind !== 'note' || isLong(noted) || !finds) return false;
  const since = secondsBetween(last.at, at);
  return since !== undefined && since >= 0 && since <= noteBelongs;
}

/** A finding that is told with the words that were noted of it. */
const withNote = (finding: Clause, { noted = '' }: Clause): Clause => ({
  ...finding,
  kind: 'finding',
  phrase: (phrasing) => finding.phrase({ ...phrasing, noted }),
});

const alike: readonly Clause['kind'][] = ['taking off', 'closing', 'quiet finding'];

/** Puts neighbors together that are said in one sentence. */
export function grouped(clauses: readonly Clause[]): readonly Group[] {
  const groups: Group[] = [];
  for (const clause of clauses) {
    const last = groups.at(-1);
    const same = last?.clauses[0].kind === clause.kind && alike.includes(clause.kind);
    const leg = last?.clauses[0].finding?.leg === clause.finding?.leg;
    if (last !== undefined && same && leg && !clause.begins)
      groups.splice(-1, 1, { clauses: [...last.clauses, clause] });
    else groups.push({ clauses: [clause] });
  }
  return groups;
}
