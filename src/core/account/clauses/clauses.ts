import type { Entry } from '../../session/correct.ts';
import type { Kind, PayloadOf } from '../../session/event.ts';
import type { Block } from '../block.ts';
import { checkCautions, repairCautions } from '../blocks/cautions.ts';
import { plain, type Closed, type Piece, type Saying } from './clause.ts';
import { checkPiece, proofPiece } from './checks.ts';
import { condemnedPiece, repairedPiece } from './repairs.ts';
import { withdrawnWords } from './finding-words.ts';
import type { Teller } from '../context.ts';
import { askedThing, clause, joined, minuteWords, sentence } from '../words/wording.ts';

export type Place = { readonly teller: Teller; readonly entry: Entry };
type Makers = {
  readonly [K in Kind]?: (said: PayloadOf<K>, place: Place) => Omit<Piece, 'n' | 'at'> | undefined;
};

/** What an event is told as; undefined for what needs no words. */
export function pieceOf(teller: Teller, entry: Entry): Piece | undefined {
  const { event, said, correctedBy } = entry;
  const told = said !== undefined && 'told' in said ? said.told : undefined;
  const place = { n: event.n, at: told ?? event.at };
  if (said === undefined) {
    if (correctedBy.length === 0 || event.kind === 'stranger') return undefined;
    const text = withdrawnWords(teller, entry);
    return { ...plain(text), ...place, say: () => text };
  }
  const make = makers[said.kind] as
    | ((said: unknown, place: Place) => Omit<Piece, 'n' | 'at'> | undefined)
    | undefined;
  const made = make?.(said, { teller, entry });
  return made === undefined ? undefined : { ...made, ...place };
}

const makers: Makers = {
  found: (_, { teller, entry }) => {
    const finding = teller.findings.get(entry.event.n);
    if (finding === undefined) return undefined;
    const cautions = checkCautions(teller.story, finding.check, finding.leg);
    return { ...checkPiece(teller, entry, finding), cautions };
  },
  proved: (_, { teller, entry }) => {
    const finding = teller.findings.get(entry.event.n);
    if (finding === undefined) return undefined;
    const cautions = checkCautions(teller.story, finding.check, finding.leg);
    return { ...proofPiece(teller, entry, finding), cautions };
  },
  condemned: ({ cause }, { teller, entry }) => condemnedPiece(teller, entry.event.n, cause),
  repaired: (said, { teller, entry }) => ({
    ...repairedPiece(teller, entry, said),
    cautions: repairCautions(teller.story, said),
  }),
  unsure: ({ check }, { teller }) =>
    plain(`${teller.who} could not tell ${askedThing(teller.story, check)}`),
  skipped: ({ check, reason }, { teller }) =>
    plain(`${teller.who} passed over ${askedThing(teller.story, check)}: ${clause(reason)}`),
  noted: ({ text }, { teller }) => plain(`${teller.who} noted: "${text.trim()}"`),
  photographed: (said) => {
    const picture = pictureOf(said);
    return picture === undefined
      ? plain(`a photograph was taken: ${clause(said.caption)} (${said.file})`)
      : { ...plain(''), picture, say: () => '' };
  },
  timer: ({ label, minutes }) => plain(`a timer ran for ${minuteWords(minutes)}: ${clause(label)}`),
  'part-off': ({ part, where }, { teller }) =>
    plain(
      `${teller.who} took off ${thePart(part)}${where === undefined ? '' : ` (${clause(where)})`}`,
    ),
  'part-on': ({ part }) => closing({ part: thePart(part) }),
  access: ({ access, now, implied }, { teller }) => {
    const name = clause(accessName(teller, access));
    if (now === 'closed') return closing({ access: name });
    return implied === true
      ? undefined
      : plain(`${teller.who} opened up for what came next (${name})`, { begins: true });
  },
  leg: ({ reason }, { teller, entry }) => {
    const leg = teller.story.legs.find(({ since }) => since === entry.event.n);
    if (leg === undefined) return undefined;
    const because = reason === undefined ? '' : `: ${clause(reason)}`;
    return plain(`the work went on with another complaint, "${leg.tree.title}"${because}`, {
      begins: true,
    });
  },
  paused: (_, { teller }) => plain(`${teller.who} put the work down`),
  resumed: ({ torn }, { teller }) =>
    plain(
      `${teller.who} took the work up again${torn === undefined ? '' : '; the record had been cut off in the middle of a line, which is passed over'}`,
      { begins: true },
    ),
};

/** Said once for all that is closed up in a row. */
const closing = (closed: Closed): Omit<Piece, 'n' | 'at'> => ({
  ...plain(''),
  kind: 'closing',
  closed,
});

/** Parts that went back on, and what was closed up again, in one sentence. */
export function closingWords(closed: readonly Closed[], { when }: Saying): string {
  const parts = closed.flatMap((one) => ('part' in one ? [one.part] : []));
  const accesses = closed.flatMap((one) => ('access' in one ? [one.access] : []));
  const said = [
    ...(parts.length === 0 ? [] : [`${joined(parts)} went back on`]),
    ...(accesses.length === 0
      ? []
      : [`what had been opened was closed up again (${accesses.join('; ')})`]),
  ].join(', and ');
  return sentence(when === '' ? said : `${when} ${said}`);
}

const thePart = (part: string): string =>
  /^(the|a|an|both|all|its|\d)\b/i.test(part.trim()) ? clause(part) : `the ${clause(part)}`;

const accessName = ({ story }: Teller, access: string): string =>
  story.legs.map(({ shop }) => shop.accesses[access]?.name).find((name) => name !== undefined) ??
  'a part of the vehicle';

/** A picture beside the record; anything but a plain relative path is only told, never linked. */
function pictureOf({ file, caption }: PayloadOf<'photographed'>): Block | undefined {
  const safe = /^[\w][\w./ -]*$/.test(file) && !file.includes('..');
  return safe ? { kind: 'picture', file, caption } : undefined;
}
