import type { Entry } from '../../session/correct.ts';
import type { Kind, PayloadOf } from '../../session/event.ts';
import { accessName } from '../../session/story.ts';
import type { Block } from '../block.ts';
import { checkCautions, repairCautions } from '../blocks/cautions.ts';
import { plain, type Closed, type Clause, type Phrasing } from './clause.ts';
import { checkClause, proofClause } from './checks.ts';
import { condemnedClause, repairedClause } from './repairs.ts';
import { withdrawnWords } from './finding-words.ts';
import type { AccountContext } from '../context.ts';
import { askedThing, asClause, joined, minuteWords, sentence } from '../words/wording.ts';

export type Place = { readonly context: AccountContext; readonly entry: Entry };
type Makers = {
  readonly [K in Kind]?: (said: PayloadOf<K>, place: Place) => Omit<Clause, 'n' | 'at'> | undefined;
};

/** What an event is told as; undefined for what needs no words. */
export function clauseOf(context: AccountContext, entry: Entry): Clause | undefined {
  const { event, said, correctedBy } = entry;
  const told = said !== undefined && 'told' in said ? said.told : undefined;
  const place = { n: event.n, at: told ?? event.at };
  if (said === undefined) {
    if (correctedBy.length === 0 || event.kind === 'unknown') return undefined;
    const text = withdrawnWords(context, entry);
    return { ...plain(text), ...place, phrase: () => text };
  }
  const make = makers[said.kind] as
    | ((said: unknown, place: Place) => Omit<Clause, 'n' | 'at'> | undefined)
    | undefined;
  const made = make?.(said, { context, entry });
  return made === undefined ? undefined : { ...made, ...place };
}

const makers: Makers = {
  found: (_, { context, entry }) => {
    const finding = context.findings.get(entry.event.n);
    if (finding === undefined) return undefined;
    const cautions = checkCautions(context.story, finding.check, finding.leg);
    return { ...checkClause(context, entry, finding), cautions };
  },
  proved: (_, { context, entry }) => {
    const finding = context.findings.get(entry.event.n);
    if (finding === undefined) return undefined;
    const cautions = checkCautions(context.story, finding.check, finding.leg);
    return { ...proofClause(context, entry, finding), cautions };
  },
  condemned: ({ cause }, { context, entry }) => condemnedClause(context, entry.event.n, cause),
  repaired: (said, { context, entry }) => ({
    ...repairedClause(context, entry, said),
    cautions: repairCautions(context.story, said),
  }),
  unsure: ({ check }, { context }) =>
    plain(`${context.who} could not tell ${askedThing(context.story, check)}`),
  skipped: ({ check, reason }, { context }) =>
    plain(`${context.who} passed over ${askedThing(context.story, check)}: ${asClause(reason)}`),
  noted: ({ text }, { context }) => plain(`${context.who} noted: "${text.trim()}"`),
  photographed: (said) => {
    const picture = pictureOf(said);
    return picture === undefined
      ? plain(`a photograph was taken: ${asClause(said.caption)} (${said.file})`)
      : { ...plain(''), picture, phrase: () => '' };
  },
  timer: ({ label, minutes }) =>
    plain(`a timer ran for ${minuteWords(minutes)}: ${asClause(label)}`),
  'part-off': ({ part, where }, { context }) =>
    plain(
      `${context.who} took off ${thePart(part)}${where === undefined ? '' : ` (${asClause(where)})`}`,
    ),
  'part-on': ({ part }) => closing({ part: thePart(part) }),
  access: ({ access, now, implied }, { context }) => {
    const name = asClause(accessName(context.story, access));
    if (now === 'closed') return closing({ access: name });
    return implied === true
      ? undefined
      : plain(`${context.who} opened up for what came next (${name})`, { begins: true });
  },
  leg: ({ reason }, { context, entry }) => {
    const leg = context.story.legs.find(({ since }) => since === entry.event.n);
    if (leg === undefined) return undefined;
    const because = reason === undefined ? '' : `: ${asClause(reason)}`;
    return plain(`the work went on with another complaint, "${leg.tree.title}"${because}`, {
      begins: true,
    });
  },
  paused: (_, { context }) => plain(`${context.who} put the work down`),
  resumed: ({ torn }, { context }) =>
    plain(
      `${context.who} took the work up again${torn === undefined ? '' : '; the record had been cut off in the middle of a line, which is passed over'}`,
      { begins: true },
    ),
};

/** Said once for all that is closed up in a row. */
const closing = (closed: Closed): Omit<Clause, 'n' | 'at'> => ({
  ...plain(''),
  kind: 'closing',
  closed,
});

/** Parts that went back on, and what was closed up again, in one sentence. */
export function closingWords(closed: readonly Closed[], { when }: Phrasing): string {
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
  /^(the|a|an|both|all|its|\d)\b/i.test(part.trim()) ? asClause(part) : `the ${asClause(part)}`;

/** A picture beside the record; anything but a plain relative path is only told, never linked. */
function pictureOf({ file, caption }: PayloadOf<'photographed'>): Block | undefined {
  const safe = /^[\w][\w./ -]*$/.test(file) && !file.includes('..');
  return safe ? { kind: 'picture', file, caption } : undefined;
}
