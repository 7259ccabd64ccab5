import { settledFrom } from '../../reason/advice/explain.ts';
import { leaderIn, type BeliefStep, type ChanceMap } from '../../reason/history/belief-history.ts';
import { suspectFrom } from '../../reason/grade.ts';
import { percent } from '../../reason/history/wording.ts';
import { unlisted } from '../../tree/model.ts';
import { subject } from '../clauses/grammar.ts';
import type { AccountContext } from '../context.ts';
import { causeIn, sentence } from '../words/wording.ts';
import { isCured } from './cure.ts';

/** A lead lower than this is none: all stand close together. */
const worthLeading = 0.2;
/** A move of so much is told with its numbers. */
const worthNumbers = 0.2;
/** Who stood lower than this is not told of when it falls away. */
const worthRuling = 0.08;
const mostRuled = 3;

/** What some findings in a row came to, in one sentence by who rose and who fell; empty for nothing. */
export function meaningOf(context: AccountContext, events: readonly number[]): string {
  const steps = events.flatMap((n) => context.stepAt(n) ?? []);
  const open = steps.filter(({ n, kind }) => kind === 'finding' && !isCured(context, n));
  const [first, last] = [open[0], open.at(-1)];
  if (first?.before === undefined || last === undefined || first.leg !== last.leg) return '';
  if (last.after === undefined)
    return 'What had been found could not all be true by then: one finding had to be doubted.';
  const name = (id: string): string => nameIn(context, id, last.leg);
  const lead = leadWords(context, { ...last, before: first.before }, name);
  const ruled = ruledOut(context, first.before, last).map(name);
  const out = ruled.length === 0 ? '' : `${subject(ruled)} ruled out`;
  const told = [lead, out].filter((part) => part !== '').join('; ');
  return told === '' ? '' : sentence(told);
}

/** Whether a finding turned the search: another suspect in front to stay, or the first one moved far. */
export const isTurn = (context: AccountContext, step: BeliefStep): boolean =>
  leadWords(context, step, String) !== '';

type NameOf = (id: string) => string;

/** Who leads, from what: `the points overtook the condenser, 28 % against 12 %`. */
function leadWords(context: AccountContext, step: BeliefStep, name: NameOf): string {
  const { before, after } = step;
  if (before === undefined || after === undefined) return '';
  const [was, leads] = [leaderIn(before), leaderIn(after)];
  if (leads === undefined) return '';
  if (leads !== unlisted) return listedLead(context, step, { was, leads }, name);
  return was === leads ? '' : noneFits(context, step, after.get(leads) ?? 0);
}

type Leads = { readonly was: string | undefined; readonly leads: string };

function listedLead(
  context: AccountContext,
  step: BeliefStep,
  { was, leads }: Leads,
  name: NameOf,
): string {
  const { before, after } = step;
  const [from, to] = [before?.get(leads) ?? 0, after?.get(leads) ?? 0];
  if (to >= settledFrom && from < settledFrom)
    return `nearly all now spoke for ${name(leads)} (${percent(to)})`;
  if (was !== leads)
    return after !== undefined && isLead(context, step, leads)
      ? newLead({ was, leads }, after, name)
      : '';
  return to - from < worthNumbers ? '' : `${name(leads)} rose from ${bare(from)} to ${percent(to)}`;
}

const noneFits = (context: AccountContext, step: BeliefStep, to: number): string =>
  isLead(context, step, unlisted)
    ? `no listed cause fitted well any more (something else stood at ${percent(to)})`
    : '';

/** Steps through which a suspect must stay in front: who only comes next in a row leads nobody anywhere. */
const heldThrough = 2;

function isLead(
  { history }: AccountContext,
  { n, leg, after }: BeliefStep,
  leads: string,
): boolean {
  if ((after?.get(leads) ?? 0) < worthLeading) return false;
  const later = history.filter((step) => step.leg === leg && step.n > n && step.kind === 'finding');
  return later
    .slice(0, heldThrough)
    .every((step) => step.after !== undefined && leaderIn(step.after) === leads);
}

/** Another suspect in front, and what has become of the one that led. */
function newLead({ was, leads }: Leads, after: ChanceMap, name: NameOf): string {
  const left = was === undefined || was === unlisted ? 0 : (after.get(was) ?? 0);
  return was === undefined || left < suspectFrom
    ? `${name(leads)} took the lead, at ${percent(after.get(leads) ?? 0)}`
    : `${name(leads)} overtook ${name(was)}, ${percent(after.get(leads) ?? 0)} against ${percent(left)}`;
}

const bare = (chance: number): string => percent(chance).replace(/^(\d+) %$/, '$1');

/** Suspects that fell away here and stay away as long as this complaint is looked for. */
function ruledOut(
  { history }: AccountContext,
  before: ChanceMap,
  { n, leg, after }: BeliefStep,
): readonly string[] {
  const later = history.filter((step) => step.leg === leg && step.n > n);
  return [...before]
    .filter(
      ([id, chance]) =>
        id !== unlisted &&
        chance >= worthRuling &&
        (after?.get(id) ?? 0) < suspectFrom &&
        later.every((step) => (step.after?.get(id) ?? 0) < suspectFrom),
    )
    .toSorted(([, one], [, other]) => other - one)
    .slice(0, mostRuled)
    .map(([id]) => id);
}

export const nameIn = ({ story }: AccountContext, id: string, leg: number): string =>
  id === unlisted ? 'something not on the list' : causeIn(story, id, leg);
