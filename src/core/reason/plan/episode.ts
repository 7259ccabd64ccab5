import type { Case, CaseState } from '../belief/evidence.ts';
import { changed, moveMinutes, parked } from '../advice/minutes.ts';
import type { Move } from '../advice/minutes.ts';
import type { Model } from '../belief/model.ts';

/** An episode under way: what the mechanic knows of it, and the minutes it has cost so far. */
export type Episode = { readonly state: CaseState; readonly minutes: number };

/** An episode on a parked vehicle, begun; `given` is the case without findings. */
export const beginEpisode = ({ accesses }: Case): Episode => ({
  state: { findings: [], repairs: [], openAccess: [], standing: parked, accesses },
  minutes: 0,
});

/** The check whose result a move ends with: a repair ends with its proof. */
export const shownBy = ({ complaint }: Model, { do: what, index }: Move): number =>
  what === 'check' ? index : complaint;

/** The episode once the work of a move is done, before its result is known. */
export function workOn({ state, minutes }: Episode, move: Move, given: Case): Episode {
  const { causes, checks } = given.model;
  const { repairs, openAccess = [], standing = {} } = state;
  const cause = move.do === 'repair' ? causes[move.index] : undefined;
  const through = [cause, checks[shownBy(given.model, move)]].filter((work) => work !== undefined);
  return {
    state: {
      ...state,
      repairs:
        cause === undefined ? repairs : [...repairs, { cause: cause.id, at: repairs.length }],
      openAccess: [...new Set([openAccess, ...through.map(({ access }) => access)].flat())],
      standing: through.reduce(
        (before, work) => changed(before, work.standing),
        changed(parked, standing),
      ),
    },
    minutes: minutes + moveMinutes({ ...given, openAccess, standing }, move).total,
  };
}

/** The episode once a check has shown a result. */
export function findIn(
  { state, minutes }: Episode,
  check: number,
  result: number,
  model: Model,
): Episode {
  const id = model.checks[check]?.id ?? '';
  const finding = { check: id, lo: result, hi: result, at: state.repairs.length };
  return { state: { ...state, findings: [...state.findings, finding] }, minutes };
}

/** Whether a result proves the episode done: the complaint no longer shows. */
export const isProof = ({ complaint }: Model, check: number, result: number): boolean =>
  check === complaint && result === 0;
