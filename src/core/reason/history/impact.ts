import { settledFrom } from '../advice/explain.ts';
import { unlisted } from '../../tree/model.ts';
import { leaderIn, type ChanceMap, type BeliefStep } from './belief-history.ts';

/** Below this chance a cause is no suspect any more. */
export const suspectFrom = 0.01;

/** A shift smaller than this is not worth a word. */
const worthTelling = 0.05;

export type Shift = { readonly cause: string; readonly from: number; readonly to: number };

/** What one finding did to the suspects. */
export type Impact = {
  /** Listed causes that were suspects before and are none now. */
  readonly cleared: readonly string[];
  /** Listed causes that were suspects before it. */
  readonly suspects: number;
  /** The likeliest cause after it. */
  readonly leader: Shift | undefined;
  readonly newLeader: boolean;
  /** It took the leader over the mark where a cause counts as found. */
  readonly settles: boolean;
  readonly up: Shift | undefined;
  readonly down: Shift | undefined;
};

/** Listed causes that may still be there. */
export const suspectsIn = (chances: ChanceMap): readonly string[] =>
  [...chances].filter(([id, chance]) => id !== unlisted && chance >= suspectFrom).map(([id]) => id);

/** What a step changed; undefined where its findings contradict one another. */
export function impactOf({ before, after }: BeliefStep): Impact | undefined {
  if (before === undefined || after === undefined) return undefined;
  const shifts = [...after].map(([cause, to]): Shift => ({
    cause,
    from: before.get(cause) ?? 0,
    to,
  }));
  const suspects = suspectsIn(before);
  const cleared = suspects.filter((id) => {
    const [from, to] = [before.get(id) ?? 0, after.get(id) ?? 0];
    return to < suspectFrom && to < from / 2;
  });
  const leading = leaderIn(after);
  const leader = shifts.find(({ cause }) => cause === leading);
  const rise = ({ from, to }: Shift): number => to - from;
  const byRise = shifts.toSorted((one, other) => rise(other) - rise(one));
  const [up, down] = [byRise[0], byRise.at(-1)];
  return {
    cleared,
    suspects: suspects.length,
    leader,
    newLeader: leaderIn(before) !== leading,
    settles: leader !== undefined && leader.from < settledFrom && leader.to >= settledFrom,
    up: up !== undefined && rise(up) >= worthTelling ? up : undefined,
    down: down !== undefined && -rise(down) >= worthTelling ? down : undefined,
  };
}

/** Whether a finding left the suspects where they were. */
export const toldLittle = ({ cleared, up, down, newLeader }: Impact): boolean =>
  cleared.length === 0 && up === undefined && down === undefined && !newLeader;
