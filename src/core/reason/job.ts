import { caseOf } from './case.ts';
import type { AccessMinutes, Case, CaseState } from './case.ts';
import { Costs } from './costs.ts';
import { changed, parked } from './minutes.ts';
import type { Move } from './minutes.ts';
import type { Model } from './model.ts';

/** What a job goes by: the model, and what every step of it costs. */
export type Book = { readonly model: Model; readonly costs: Costs };

/** A job under way: what the mechanic knows of it, and what it has cost so far. */
export type Job = {
  readonly state: CaseState;
  /** Causes mended, by index in the model, in order. */
  readonly mended: readonly number[];
  readonly opened: number;
  readonly standing: number;
  readonly minutes: number;
  readonly checks: number;
};

export type Accesses = Readonly<Record<string, AccessMinutes>>;

/** A case of which only the complaint is known. */
export function freshCase(model: Model, accesses: Accesses): Case {
  const given = caseOf(model, { findings: [], repairs: [], accesses });
  if (given.kind === 'bad') throw new RangeError('a model without findings is always a case');
  return given.value;
}

/** What every step costs on a parked vehicle. */
export const costsOf = (model: Model, accesses: Accesses): Costs =>
  new Costs(freshCase(model, accesses));

/** A job on a parked vehicle, begun. */
export const beginJob = (accesses: Accesses, { opened, standing }: Costs): Job => ({
  state: { findings: [], repairs: [], openAccess: [], standing: parked, accesses },
  mended: [],
  opened,
  standing,
  minutes: 0,
  checks: 0,
});

/** The check whose result a move ends with: a repair ends with its proof. */
export const shownBy = ({ complaint }: Model, { do: what, index }: Move): number =>
  what === 'check' ? index : complaint;

/** The job once the work of a move is done, before its result is known. */
export function workOn(job: Job, move: Move, { model, costs }: Book): Job {
  const cause = move.do === 'repair' ? model.causes[move.index] : undefined;
  const step = cause === undefined ? move.index : costs.repair(move.index);
  const repairs = job.state.repairs;
  const through = [cause, model.checks[shownBy(model, move)]].filter((work) => work !== undefined);
  return {
    state: {
      ...job.state,
      repairs:
        cause === undefined ? repairs : [...repairs, { cause: cause.id, at: repairs.length }],
      openAccess: [
        ...new Set([job.state.openAccess ?? [], ...through.map(({ access }) => access)].flat()),
      ],
      standing: through.reduce(
        (standing, work) => changed(standing, work.standing),
        changed(parked, job.state.standing ?? {}),
      ),
    },
    mended: cause === undefined ? job.mended : [...job.mended, move.index],
    opened: job.opened | (costs.masks[step] ?? 0),
    standing: costs.standingAfter(step, job.standing),
    minutes: job.minutes + costs.minutes(step, job.opened, job.standing),
    checks: job.checks + (cause === undefined ? 1 : 0),
  };
}

/** The job once a check has shown a result. */
export function findIn(job: Job, check: number, result: number, model: Model): Job {
  const finding = {
    check: model.checks[check]?.id ?? '',
    lo: result,
    hi: result,
    at: job.mended.length,
  };
  return { ...job, state: { ...job.state, findings: [...job.state.findings, finding] } };
}

/** Whether a result proves the job done: the complaint no longer shows. */
export const isProof = ({ complaint }: Model, check: number, result: number): boolean =>
  check === complaint && result === 0;
