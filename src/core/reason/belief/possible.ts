import { at as entry } from '../../at.ts';
import { complaintOf, type Model, type Observation } from './model.ts';
import { unlisted } from '../../tree/model.ts';
import type { Totals } from '../../tree/noisy-max.ts';
import { atMost } from './tables.ts';

type Told = {
  readonly model: Model;
  readonly evidence: readonly Observation[];
  /** By cause: how many repairs came before its own; Infinity while it is not repaired. */
  readonly repairedAt: readonly number[];
  /** By cause: how many repairs had been made when it came. */
  readonly arrivedAt: readonly number[];
};

/** Evidence that can all be true, and what had to be set aside for that. */
export type Possible = Omit<Told, 'model' | 'arrivedAt'> & {
  readonly setAside: readonly Observation[];
};

/**
 * Makes findings that cannot all be true into evidence that can, so that the belief never dies: a
 * check that got worse over a repair, or better without one that it shows, keeps its newest
 * finding only. A complaint that shows although everything that could show it is mended is the
 * work of something not on the list, which is there anew: looking for it does not use it up.
 * Evidence that can be true is left as it is.
 */
export function possible(told: Told): Possible {
  const settled = withComplaint(told);
  const setAside = [...settled.setAside];
  const groups = Map.groupBy(settled.evidence, ({ group }) => group);
  const holder = holderOf({ ...told, ...settled });
  const evidence = [...groups].flatMap(([, findings]) => {
    const ofComplaint = findings.some((one) => isComplaint(told.model, one));
    if (ofComplaint || findings.every((one) => holder.explains(findings, one))) return findings;
    setAside.push(...findings.slice(0, -1));
    return findings.slice(-1);
  });
  return { evidence, repairedAt: settled.repairedAt, setAside };
}

/** Whether a finding is one of the complaint's own test, or of a copy of it. */
const isComplaint = (model: Model, { check }: Observation): boolean =>
  entry(model.checks, check).group === complaintOf(model).group;

/** The complaint's own test first: it alone has no background that could explain it. */
function withComplaint(told: Told): Possible {
  const shows = told.evidence.filter((one) => isComplaint(told.model, one));
  const others = told.evidence.filter((one) => !isComplaint(told.model, one));
  const fits = (findings: readonly Observation[], repairedAt = told.repairedAt): boolean => {
    const holder = holderOf({ ...told, evidence: [...others, ...findings], repairedAt });
    return findings.every((one) =>
      holder.explains(
        findings.filter(({ group }) => group === one.group),
        one,
      ),
    );
  };
  const whole = { evidence: told.evidence, repairedAt: told.repairedAt, setAside: [] };
  // Of what comes and goes the newest stands at the place of its check, before the copies.
  const { group } = complaintOf(told.model);
  const newest = shows.findLast((one) => one.group === group);
  if (newest === undefined || fits(shows)) return whole;
  const setAside = shows.filter((one) => one !== newest);
  if (fits([newest])) return { ...whole, evidence: [...others, newest], setAside };
  const repairedAt = told.repairedAt.map((at, cause) =>
    told.model.causes[cause]?.id === unlisted ? Infinity : at,
  );
  const there = { ...newest, lo: 1, hi: complaintOf(told.model).results.length - 1 };
  return {
    evidence: fits([there], repairedAt) ? [...others, there] : others,
    repairedAt,
    setAside: [...setAside, newest],
  };
}

type Holder = {
  /** Whether anything can have produced a finding, one of all those of its group. */
  readonly explains: (all: readonly Observation[], one: Observation) => boolean;
};

/**
 * What can have produced a finding: the background, or a cause that is there by then and can have
 * been there all along, with no more than its check showed at any time while it was. Any number of
 * causes may be there, and each can miss every check but the complaint's, so findings of other
 * checks never stand in the way.
 */
function holderOf({ model, evidence, repairedAt, arrivedAt }: Told): Holder {
  const shows = evidence.filter((one) => isComplaint(model, one));
  const upperBoundOf = (all: readonly Observation[], there: (at: number) => boolean): number =>
    Math.min(...all.filter(({ at }) => there(at)).map(({ hi }) => hi));
  const thereAt = (cause: number) => (at: number) =>
    entry(arrivedAt, cause) <= at && at <= entry(repairedAt, cause);
  const allowed = model.causes.map((_, cause) => {
    const totals = model.checks[model.complaint]?.links[cause];
    return totals === undefined || atMost(totals, upperBoundOf(shows, thereAt(cause))) > 0;
  });
  const reaches = (totals: Totals | undefined, upper: number, lo: number): boolean =>
    totals !== undefined && atMost(totals, upper) > atMost(totals, lo - 1);
  return {
    explains: (all, { check, lo, at }) =>
      lo === 0 ||
      reaches(
        model.checks[check]?.background,
        upperBoundOf(all, () => true),
        lo,
      ) ||
      model.causes.some(
        (_, cause) =>
          allowed[cause] === true &&
          thereAt(cause)(at) &&
          reaches(model.checks[check]?.links[cause], upperBoundOf(all, thereAt(cause)), lo),
      ),
  };
}
