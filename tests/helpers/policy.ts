import type { ReasoningInput } from '../../src/core/reason/belief/evidence.ts';
import { LookAhead } from '../../src/core/reason/advice/look-ahead.ts';
import type { Move } from '../../src/core/reason/advice/minutes.ts';
import { negligible, wholeTables } from './optimum.ts';
import {
  afterCheck,
  afterFailedProof,
  canTell,
} from '../../src/core/reason/advice/search-state.ts';
import type { SearchState } from '../../src/core/reason/advice/search-state.ts';
import type { SearchTables } from '../../src/core/reason/advice/search-tables.ts';

/** A place on a policy's way: the case as the policy sees it. */
export type Told = {
  readonly findings: readonly { check: number; result: number; at: number }[];
  readonly repairs: readonly number[];
};
export type Policy = (told: Told, at: SearchState, tables: SearchTables) => Move;

/** Exact expected minutes of a policy: every result of every step it takes is followed. */
export function policyMinutes(input: ReasoningInput, policy: Policy): number {
  const { tables, at: start } = wholeTables(input);
  const { costs } = tables;
  const ahead = new LookAhead(tables);
  const follow = (told: Told, at: SearchState): number => {
    if (at.mass <= negligible) return ahead.mendOnly(at).cost;
    const move = policy(told, at, tables);
    if (move.do === 'repair') {
      if ((at.repaired & (1 << move.index)) !== 0)
        throw new RangeError(`cause ${move.index} is mended already`);
      const spent = at.mass * costs.cost(costs.repair(move.index), at.opened, at.standing);
      const next = { ...told, repairs: [...told.repairs, move.index] };
      return spent + follow(next, afterFailedProof(tables, at, move.index));
    }
    if (!canTell(tables, at, move.index))
      throw new RangeError(`check ${move.index} can tell nothing here`);
    const { parts } = ahead.scoreCheck(at, move.index);
    return parts.reduce(
      (all, weights, result) => {
        const finding = { check: move.index, result, at: told.repairs.length };
        const next = { ...told, findings: [...told.findings, finding] };
        return all + follow(next, afterCheck(tables, at, move.index, { result, weights }));
      },
      at.mass * costs.cost(move.index, at.opened, at.standing),
    );
  };
  return follow({ findings: [], repairs: [] }, start);
}
