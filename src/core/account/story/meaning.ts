import { settledFrom } from '../../reason/advice/explain.ts';
import { leaderIn, type BeliefStep, type ChanceMap } from '../../reason/history/belief-history.ts';
import { suspectFrom } from '../../reason/history/impact.ts';
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
  const lead = leadWords(first.before, last.after, name);
  const ruled = ruledOut(context, first.before, last).map(name);
  const out = ruled.length === 0 ? '' : `${subject(ruled)} ruled out`;
  const told = [lead, out].filter((part) => part !== '').join('; ');
  return told === '' ? '' : sentence(told);
}

/** Whether the steps of some findings put another suspect in front, or moved the first one far. */
export function isTurn({ before, after }: BeliefStep): boolean {
  return before !== undefined && after !== undefined && leadWords(before, after, String) !== '';
}

type NameOf = (id: string) => string;

/** Who leads, from what: `the points overtook the condenser, 28 % against 12 %`. */
function leadWords(before: ChanceMap, after: ChanceMap, name: NameOf): string {
  const [was, leads] = [leaderIn(before), leaderIn(after)];
  if (leads === undefined) return '';
  const [from, to] = [before.get(leads) ?? 0, after.get(leads) ?? 0];
  if (to >= settledFrom && from < settledFrom)
    return `nearly all now spoke for ${name(leads)} (${percent(to)})`;
  if (was !== leads) return to < worthLeading ? '' : newLead({ was, leads }, after, name);
  if (Math.abs(to - from) < worthNumbers) return '';
  return `${name(leads)} ${to > from ? 'rose' : 'fell'} from ${bare(from)} to ${percent(to)}`;
}

/** Another suspect in front, and what has become of the one that led. */
function newLead(
  { was, leads }: { readonly was: string | undefined; readonly leads: string },
  after: ChanceMap,
  name: NameOf,
): string {
  const left = was === undefined ? 0 : (after.get(was) ?? 0);
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
