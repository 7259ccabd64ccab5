import { settledFrom } from '../reason/advice/explain.ts';
import { refinedAdvice } from '../reason/advice/advise.ts';
import { inputFrom } from '../reason/history/from-story.ts';
import { environmentOf } from '../reason/plan/episode.ts';
import { simulate } from '../reason/plan/simulate.ts';
import { NoSimulation } from '../reason/plan/vehicle.ts';
import { ownWay } from '../reason/plan/policies.ts';
import { isOwn } from '../tree/own/bare.ts';
import { fold, type Recorded } from '../session/fold.ts';
import { firstLeg, type Story } from '../session/story.ts';
import { decisionsOf, type Decision } from './decisions.ts';
import { dear, isGuess, usualVehicles, type Luck, type Review } from './shape.ts';
import { habitsOf } from './habits.ts';
import { ledgerOf } from '../account/blocks/ledger.ts';
import { practice, strengths } from './words.ts';

type ReviewOptions = { readonly vehicles?: number };

/** Looks at one session as a mentor would; `session` is its name. */
export function reviewOf(
  session: string,
  recorded: Recorded,
  { vehicles = usualVehicles }: ReviewOptions = {},
): Review {
  const story = fold(recorded.header, recorded.events);
  const decisions = decisionsOf(recorded);
  const base = {
    session,
    who: story.header.who,
    vehicle: story.header.vehicle.name,
    opened: story.header.opened,
    complaint: firstLeg(story).tree.title,
    withoutTree: isOwn(firstLeg(story).tree),
    closed: story.closed?.as ?? 'open',
    minutes: {
      used: story.minutes,
      advised: advisedFromStart(recorded),
      ownOrder: ownOrder(story, vehicles),
      lost: decisions.reduce((sum, { lost }) => sum + lost, 0),
      ledger: ledgerOf(story),
    },
    decisions,
    guesses: decisions.filter(isGuess).length,
    toldNothing: decisions.filter(({ tellsNothing }) => tellsNothing).length,
    habits: habitsOf(story),
    luck: luckOf(story, decisions),
  };
  return { ...base, strengths: strengths(base), practise: practice(base) };
}

/** The advice engine's own figure before anything was done. */
function advisedFromStart({ header }: Recorded): number | undefined {
  const made = inputFrom(fold(header, []));
  const advice = made.kind === 'good' ? refinedAdvice(made.value) : made;
  return advice.kind === 'good' ? advice.value.next[0]?.expectedLeft : undefined;
}

const seed = 20_260_411;

/** Mean minutes by the tree's own order; no figure for a tree that cannot be simulated. */
function ownOrder(story: Story, count: number): number | undefined {
  const leg = firstLeg(story);
  if (isOwn(leg.tree)) return undefined;
  try {
    const [own] = simulate({
      environment: environmentOf(leg.tree, leg.shop.accesses),
      count,
      seed,
      policies: { own: ownWay(leg.tree) },
    });
    return own?.mean;
  } catch (error) {
    if (error instanceof NoSimulation) return undefined;
    throw error;
  }
}

function luckOf(story: Story, decisions: readonly Decision[]): readonly Luck[] {
  return decisions.flatMap((decision, index): readonly Luck[] => {
    const { n, chosen, lost, chance, known } = decision;
    if (chance !== undefined) {
      const next = story.repairs.find((repair) => repair.n > n)?.n ?? Infinity;
      const proof = story.proofs.find((one) => one.n > n && one.n < next);
      if (proof === undefined || proof.good !== isGuess(decision)) return [];
      return [
        { n, kind: proof.good ? 'lucky guess' : 'sound choice that failed', words: chosen.words },
      ];
    }
    const after = decisions[index + 1]?.known.chance ?? 0;
    return lost >= dear && known.chance < settledFrom && after >= settledFrom
      ? [{ n, kind: 'slower check that settled it', words: chosen.words }]
      : [];
  });
}
