import { atMost } from '../../src/core/reason/belief/tables.ts';
import type { JobState } from '../../src/core/reason/belief/evidence.ts';
import type { Model } from '../../src/core/reason/belief/model.ts';
import { inputAt, oddsOnly, type Policy } from '../../src/core/reason/plan/policies.ts';

/** The last finding of a check, or of one that shows the same thing. */
function lastOf({ checks }: Model, state: JobState, check: number) {
  const group = checks[check]?.group;
  const kin = checks.filter((one) => one.group === group).map(({ id }) => id);
  return state.findings.findLast((finding) => kin.includes(finding.check));
}

const ready = (model: Model, state: JobState, check: number): boolean =>
  (model.checks[check]?.gates ?? []).every((gate) => {
    const found = lastOf(model, state, gate.check);
    return found !== undefined && gate.results.includes(found.lo);
  });

/** Checks in their listed order; the first abnormal result is mended by what it points to. */
export const fixedChart: Policy = (model, state) => {
  const given = inputAt(model, state);
  const last = state.findings.findLast(({ check }) => check !== model.checks[model.complaint]?.id);
  if (last !== undefined && last.lo > 0 && last.at === state.repairs.length) {
    const check = model.checks.find(({ id }) => id === last.check);
    const scores = model.causes.map(({ odds }, cause) => {
      const totals = check?.links[cause];
      const open = given.repairedAt[cause] === Infinity && totals !== undefined;
      return open ? odds * (atMost(totals, last.lo) - atMost(totals, last.lo - 1)) : 0;
    });
    const most = Math.max(...scores);
    if (most > 0) return { do: 'repair', index: scores.indexOf(most) };
  }
  const next = model.checks.findIndex(
    (_, index) =>
      index !== model.complaint &&
      lastOf(model, state, index) === undefined &&
      ready(model, state, index),
  );
  return next < 0 ? oddsOnly(model, state) : { do: 'check', index: next };
};
