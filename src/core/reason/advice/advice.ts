import { at } from '../../at.ts';
import { unlisted } from '../../tree/model.ts';
import type { ReasoningInput } from '../belief/evidence.ts';
import type { Model, ModelCause, ModelCheck } from '../belief/model.ts';
import type { Belief } from '../belief/posterior.ts';
import type { Why } from './explain.ts';
import { moveMinutes } from './minutes.ts';
import type { MoveMinutes } from './minutes.ts';
import type { Ranking } from './search.ts';

type Suspect = { readonly cause: string; readonly chance: number };

export type NextStep = {
  readonly do: 'check' | 'repair';
  readonly id: string;
  /** What it takes from here, a repair with its proof. */
  readonly minutes: number;
  readonly parts: MoveMinutes;
  /** Expected minutes from now, what has to be bought at its price in minutes: what steps are ranked by. */
  readonly cost: number;
  /**
   * Expected minutes from now to a proven repair when this is done first and the advice is followed;
   * undefined until that has been walked out, and for steps far down the list.
   */
  readonly expectedLeft: number | undefined;
  /** Minutes saved on average against the tree's own next step; undefined without one, or not walked out. */
  readonly versusTree: number | undefined;
  readonly why: Why;
};

/** A repair that is not advised yet: the check, a short one, would still tell. */
type Held = { readonly cause: string; readonly check: string };

export type Advice = {
  /** 'proved': the complaint is gone. 'prove': its test comes first. 'go-on': see `next`. */
  readonly kind: 'go-on' | 'prove' | 'proved';
  /** Listed causes with a chance above zero, likeliest first. */
  readonly suspects: readonly Suspect[];
  readonly unlisted: number;
  /** Share of the evidence that the chances rest on: 1 when exact. */
  readonly coverage: number;
  /** Least cost first: minutes, and parts at their price. */
  readonly next: readonly NextStep[];
  readonly held: readonly Held[];
  /** Expected minutes, parts at their price, of the step that was asked after (`own`), wherever it stands. */
  readonly ownCost: number | undefined;
  readonly because: {
    readonly leader: Suspect | undefined;
    /** None of the listed causes fits well. */
    readonly unlistedLeads: boolean;
    /** The best step; undefined when the complaint is gone. */
    readonly why: Why | undefined;
    readonly versusTree: number | undefined;
  };
  /** Whether anything better is still to come. */
  readonly final: boolean;
};

type Rest = Pick<Advice, 'kind' | 'final'> & Partial<Ranking>;

function suspectsOf({ causes }: Model, { chances }: Belief): Suspect[] {
  return causes
    .map(({ id }, cause) => ({ cause: id, chance: at(chances, cause) }))
    .filter(({ cause, chance }) => cause !== unlisted && chance > 0)
    .toSorted((one, other) => other.chance - one.chance || (one.cause < other.cause ? -1 : 1));
}

function nextOf(input: ReasoningInput, { ranked = [], own }: Partial<Ranking>): NextStep[] {
  const { causes, checks } = input.model;
  return ranked.map(({ move, cost, expectedLeft, why }) => {
    const parts = moveMinutes(input, move);
    const { id } = at<ModelCheck | ModelCause>(move.do === 'check' ? checks : causes, move.index);
    const versusTree =
      own?.expectedLeft === undefined || expectedLeft === undefined
        ? undefined
        : own.expectedLeft - expectedLeft;
    return { do: move.do, id, minutes: parts.total, parts, cost, expectedLeft, versusTree, why };
  });
}

/** The advice as it is told. @param ranking the steps from here; none where the job is proved */
export function adviceOf(
  input: ReasoningInput,
  belief: Belief,
  { kind, final, ...ranking }: Rest,
): Advice {
  const { causes, checks } = input.model;
  const suspects = suspectsOf(input.model, belief);
  // A tree may hold that nothing is missing from its list.
  const other = belief.chances[causes.findIndex(({ id }) => id === unlisted)] ?? 0;
  const next = nextOf(input, ranking);
  const held = (ranking.held ?? []).map(({ cause, check }) => ({
    cause: at(causes, cause).id,
    check: at(checks, check).id,
  }));
  const because = {
    leader: suspects[0],
    unlistedLeads: other > (suspects[0]?.chance ?? 0),
    why: next[0]?.why,
    versusTree: next[0]?.versusTree,
  };
  const { coverage } = belief;
  const ownCost = ranking.own?.cost;
  return { kind, suspects, unlisted: other, coverage, next, held, ownCost, because, final };
}
