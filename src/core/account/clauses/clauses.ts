import { dispatch, type Handlers } from '../../dispatch.ts';
import type { Entry } from '../../session/correct.ts';
import type { Payload, PayloadOf } from '../../session/event.ts';
import { limitWords } from '../../session/costs/words.ts';
import { spellWords } from '../../session/timers/durations.ts';
import { partWords } from '../../session/costs/parts.ts';
import { standingWords } from '../../session/rules/standing-words.ts';
import { isReturn } from '../../session/complaints.ts';
import { expectedLabel } from '../../session/expecting/expected.ts';
import { fromLegs, type Story } from '../../session/story.ts';
import { baselineWords } from '../../session/baseline/baseline.ts';
import { closing, takingOff, thePart } from './apart.ts';
import { plain, type Clause } from './clause.ts';
import { checkClause, proofClause } from './checks.ts';
import { photographClause } from './photographs.ts';
import { revealedWords } from './practice.ts';
import { condemnedClause, repairedClause } from './repairs.ts';
import { pastSafeguard } from './safeguards.ts';
import { settledClause } from './settled.ts';
import { withdrawnClause } from './withdrawn.ts';
import { accountContext, type AccountContext } from '../context.ts';
import { accessThing, askedThing, asClause, joined } from '../words/wording.ts';

type Made = Omit<Clause, 'n' | 'at'>;

type Place = { readonly context: AccountContext; readonly entry: Entry };

/** What an event is told as; undefined for what cannot be read, or was corrected into nothing. */
export function clauseOf(context: AccountContext, entry: Entry): Clause | undefined {
  const { event, said, correctedBy } = entry;
  const told = said !== undefined && 'told' in said ? said.told : undefined;
  const place = { n: event.n, at: told ?? event.at };
  if (said === undefined) {
    if (correctedBy.length === 0 || event.kind === 'unknown') return undefined;
    return { ...withdrawnClause(context, event, correctedBy), ...place };
  }
  const made = dispatch(makers, 'kind', said, { context, entry });
  if (made === undefined) return undefined;
  const passed = context.story.passed.find(({ n }) => n === event.n);
  return { ...(passed === undefined ? made : pastSafeguard(context, passed, made)), ...place };
}

/** One event by itself, for a list of events: in the words of the account, without the suspects. */
export function eventWords(story: Story, entry: Entry): string {
  const clause = clauseOf(accountContext(story, {}, []), entry);
  return clause?.phrase({ when: '' }) ?? 'An entry that cannot be read.';
}

/** What the account tells in another place, or with the step it belongs to: only a list tells it here. */
const aside = (text: string): Made => plain(text, { kind: 'aside' });

const makers: Handlers<Payload, 'kind', [place: Place], Made | undefined> = {
  found: (_, { context, entry }) => {
    const finding = context.findings.get(entry.event.n);
    if (finding === undefined) return undefined;
    return checkClause(context, entry, finding);
  },
  // Told where it is reviewed: the account tells what was found.
  expected: ({ check, result }, { context }) =>
    aside(
      `${context.who} expected of ${askedThing(context.story, check)}: ${asClause(expectedLabel(context.story, check, result))}`,
    ),
  proved: (_, { context, entry }) => {
    const finding = context.findings.get(entry.event.n);
    if (finding === undefined) return undefined;
    return proofClause(context, entry, finding);
  },
  condemned: (said, { context, entry }) => condemnedClause(context, entry.event.n, said),
  'not-this': (_, { context, entry }) => {
    const finding = context.findings.get(entry.event.n);
    return finding && checkClause(context, entry, finding);
  },
  repaired: (said, { context, entry }) => repairedClause(context, entry, said),
  // Told with what it describes: of that it is a part.
  described: (said, { context }) => aside(`${context.who} noted ${describedWords(said)}`),
  unsure: ({ check }, { context }) =>
    plain(`${context.who} could not tell ${askedThing(context.story, check)}`, { kind: 'beside' }),
  skipped: ({ check, reason }, { context }) =>
    plain(`${context.who} passed over ${askedThing(context.story, check)}: ${asClause(reason)}`, {
      kind: 'beside',
    }),
  // What was taken down on the road stands in a table of its own.
  noted: ({ text, on }, { context }) =>
    plain(`${context.who} noted: "${text.trim()}"`, {
      kind: on === 'road' ? 'aside' : 'note',
      noted: text.trim(),
    }),
  photographed: (said, { context, entry }) => photographClause(context, entry.event.n, said),
  timer: ({ label, minutes }, { context }) =>
    plain(
      `${context.who} set a timer of ${spellWords(Math.round(minutes * 60))}: ${asClause(label)}`,
      { kind: 'beside' },
    ),
  'timer-off': ({ of }, { context: { story, who } }) => {
    const set = story.entries.find(({ event }) => event.n === of)?.event;
    const name = set?.kind === 'timer' ? `: ${asClause(set.label)}` : '';
    return aside(`${who} put a timer away${name}`);
  },
  limit: (said, { context: { story, who } }) => {
    const agreed = limitWords(said, story.header.currency);
    return plain(
      agreed === ''
        ? `${who} agreed on no limit of time or money`
        : `${who} agreed on a limit: ${agreed}`,
      { kind: 'beside' },
    );
  },
  // Told in the table of what it cost.
  'part-bought': ({ part: name, count, price: each, use }, { context }) =>
    aside(`${context.who} bought ${partWords({ name, count, each, use })}`),
  'part-off': (said, { context }) => takingOff(context.who, said),
  'part-on': ({ part }) => closing(thePart(part)),
  'left-apart': ({ things, why }, { context }) =>
    plain(
      `${context.who} went on to the proof although not all was back (${joined(
        things.flatMap((n) => thingTaken(context.story, n) ?? []),
      )}): ${asClause(why)}`,
    ),
  'aid-on': ({ aid }, { context }) =>
    plain(`${context.who} put on for a while: ${asClause(aid)}`, { begins: true }),
  'aid-off': ({ aid }) => plain(`what had been put on came off again: ${asClause(aid)}`),
  access: ({ access, now }, { context }) => {
    const name = accessThing(context.story, access);
    // Opening up is told with its step, and what was left open where it is still to do.
    if (now === 'closed') return aside(`what had been opened was closed up again (${name})`);
    return aside(`${context.who} opened up for what came next (${name})`);
  },
  'check-named': (said, { context }) =>
    aside(`${context.who} said what was to be looked at: ${asClause(said.what)}`),
  'check-taken': ({ check }, { context }) =>
    aside(`${context.who} took a check from the library: ${askedThing(context.story, check)}`),
  'cause-named': ({ cause, name, where }, { context }) => {
    const text = `${context.who} named what it may be: ${asClause(name)}${where === undefined ? '' : ` (${asClause(where)})`}`;
    return context.story.condemned.some((one) => one.cause === cause) ? aside(text) : plain(text);
  },
  worker: ({ who }) => plain(`${who.trim()} did the work from here on`, { begins: true }),
  leg: ({ reason, complaint }, { context, entry }) => {
    const leg = context.story.legs.find(({ since }) => since === entry.event.n);
    if (leg === undefined) return undefined;
    const because = reason === undefined ? '' : `: ${asClause(reason)}`;
    const said =
      complaint?.words === undefined ? '' : `, in its owner's words: "${complaint.words.trim()}"`;
    const back = isReturn(context.story, entry.event.n)
      ? 'the work went back to the complaint'
      : complaint === undefined
        ? 'the search went on under'
        : 'another complaint was taken up,';
    return plain(`${back} "${leg.tree.title}"${because}${said}`, { begins: true });
  },
  paused: (_, { context }) => plain(`${context.who} put the work down`),
  resumed: ({ torn }, { context }) =>
    plain(
      `${context.who} took the work up again${torn === undefined ? '' : '; the record had been cut off in the middle of a line, which is passed over'}`,
      { begins: true },
    ),
  conditions: (_, { context }) => aside(`${context.who} took down the conditions`),
  standing: ({ set }) => aside(joined(standingWords(set))),
  'check-begun': ({ check, brought = [] }, { context }) => {
    const begun = `${context.who} began with ${askedThing(context.story, check)}`;
    const said = brought.flatMap((state) => stateSaid(context.story, state) ?? []);
    return said.length === 0
      ? aside(begun)
      : plain(`${context.who} brought back what the next check needs: ${joined(said)}`, {
          kind: 'beside',
        });
  },
  corrected: ({ to }) =>
    aside(`an earlier entry was ${to === undefined ? 'withdrawn' : 'put right'}`),
  settled: (said, { context, entry }) => settledClause(context, entry, said),
  // Told together, with the vehicle.
  baseline: (said, { context }) => aside(baselineWords(context.story, said)),
  'follow-up': ({ text }) => aside(`to be done later: ${asClause(text)}`),
  closed: () => aside('the session was closed'),
  hinted: ({ says }, { context }) =>
    plain(`${context.who} asked for a hint (${asClause(says)})`, { kind: 'beside' }),
  revealed: (said, { context }) =>
    plain(`it was revealed that ${revealedWords(context.story, said)}`, { begins: true }),
  reopened: (_, { context }) =>
    plain(`${context.who} took up the closed job again`, { begins: true }),
};

function describedWords({ found, caption }: PayloadOf<'described'>): string {
  if (found !== undefined) return `what exactly was found: ${asClause(found)}`;
  return caption === undefined ? 'what was done' : `what a photograph shows: ${asClause(caption)}`;
}

/** What an event took off, opened or put on, as a thing; nothing for one that was taken back. */
function thingTaken(story: Story, n: number): string | undefined {
  const said = story.entries.find(({ event }) => event.n === n)?.said;
  if (said?.kind === 'part-off') return thePart(said.part);
  if (said?.kind === 'aid-on') return asClause(said.aid);
  return said?.kind === 'access' ? accessThing(story, said.access) : undefined;
}

/** A passing state in words, from whichever tree of the session names it. */
const stateSaid = (story: Story, state: string): string | undefined =>
  fromLegs(story, ({ tree }) => tree.states?.[state]?.say);
