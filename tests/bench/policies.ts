import { inputOf } from '../../src/core/reason/belief/evidence.ts';
import type { AccessMinutes, ReasoningInput } from '../../src/core/reason/belief/evidence.ts';
import { refinedAdvice } from '../../src/core/reason/advice/advise.ts';
import type { AdviseOptions } from '../../src/core/reason/advice/advise.ts';
import type { Advice } from '../../src/core/reason/advice/advice.ts';
import type { Prudence } from '../../src/core/reason/prudence.ts';
import { moveNamed, type Move } from '../../src/core/reason/advice/minutes.ts';
import type { Model } from '../../src/core/reason/belief/model.ts';
import { LookAhead } from '../../src/core/reason/advice/look-ahead.ts';
import type { Policy, Told } from '../helpers/policy.ts';
import type { SearchState } from '../../src/core/reason/advice/search-state.ts';
import type { Round } from '../../src/core/reason/advice/search.ts';
import type { SearchTables } from '../../src/core/reason/advice/search-tables.ts';
import { canTell } from '../../src/core/reason/advice/search-state.ts';

export type Bench = {
  readonly model: Model;
  readonly prudence: Prudence;
  readonly accesses: Readonly<Record<string, AccessMinutes>>;
};

function inputAt({ model, accesses, prudence }: Bench, told: Told): ReasoningInput {
  const open = new Set<string>();
  let standing = {};
  const done = [
    ...told.findings.map(({ check, at }) => ({ at: at + 0.25, work: [model.checks[check]!] })),
    ...told.repairs.map((cause, at) => ({
      at: at + 0.5,
      work: [model.causes[cause]!, model.checks[model.complaint]!],
    })),
  ].toSorted((one, other) => one.at - other.at);
  for (const work of done.flatMap((one) => one.work)) {
    for (const id of work.access) open.add(id);
    standing = { ...standing, ...work.standing };
  }
  const last = model.checks[model.complaint]!.results.length - 1;
  const proofs = told.repairs.map((_, at) => ({
    check: model.checks[model.complaint]!.id,
    lo: 1,
    hi: last,
    at: at + 1,
  }));
  const findings = told.findings.map(({ check, result, at }) => ({
    check: model.checks[check]!.id,
    lo: result,
    hi: result,
    at,
  }));
  const input = inputOf(model, {
    findings: [...findings, ...proofs].toSorted((one, other) => one.at - other.at),
    repairs: told.repairs.map((cause, at) => ({ cause: model.causes[cause]!.id, at })),
    openAccess: [...open],
    standing,
    accesses,
    prudence,
  });
  if (input.kind === 'bad') throw new Error(JSON.stringify(input.problems));
  return input.value;
}

function moveOf(model: Model, advice: Advice): Move {
  return moveNamed(model, advice.next[0]!)!;
}

export function advised(bench: Bench, further?: readonly Round[]): Policy {
  const options: AdviseOptions = { reckon: false, ...(further !== undefined && { further }) };
  return (told) => {
    const advice = refinedAdvice(inputAt(bench, told), options);
    if (advice.kind === 'bad') throw new Error(JSON.stringify(advice.problems));
    return moveOf(bench.model, advice.value);
  };
}

/** Repairs by odds per minute; odds as the tree gives them. */
function byOdds(told: Told, at: SearchState, tables: SearchTables): Move {
  const { costs, input } = tables;
  const rate = (cause: number) =>
    input.model.causes[cause]!.odds / costs.cost(costs.repair(cause), at.opened, at.standing);
  const left = tables.causes.filter((cause) => !told.repairs.includes(cause));
  const best = left.reduce((one, other) => (rate(other) > rate(one) ? other : one));
  return { do: 'repair', index: best };
}

export const oddsOnly: Policy = byOdds;

/** Checks as listed; at an abnormal result mend what it points to most, by odds. */
export const fixedOrder: Policy = (told, at, tables) => {
  const { checks, causes, complaint } = tables.input.model;
  const last = told.findings.at(-1);
  if (last !== undefined && last.result > 0 && last.at === told.repairs.length) {
    const share = (cause: number) => {
      const totals = checks[last.check]!.links[cause];
      if (totals === undefined || told.repairs.includes(cause)) return 0;
      return causes[cause]!.odds * (totals[last.result]! - totals[last.result - 1]!);
    };
    const best = tables.causes.reduce((one, other) => (share(other) > share(one) ? other : one));
    if (share(best) > 0) return { do: 'repair', index: best };
  }
  const done = told.findings.map(({ check }) => check);
  const next = checks.findIndex(
    (_, check) => check !== complaint && !done.includes(check) && canTell(tables, at, check),
  );
  return next < 0 ? byOdds(told, at, tables) : { do: 'check', index: next };
};

const entropy = (weights: Float64Array): number => {
  const all = weights.reduce((sum, weight) => sum + weight, 0);
  return weights.reduce((sum, w) => (w > 0 ? sum - w * Math.log2(w / all) : sum), 0);
};

/** The check that tells most per minute, until one repair is more likely than not to cure. */
export const informationPerMinute: Policy = (_told, at, tables) => {
  const ahead = new LookAhead(tables);
  const place = ahead.repairs(at, 1, -1)[0]!;
  let cures = 0;
  at.left.forEach((set, index) => {
    if ((set & (1 << place)) !== 0) cures += at.weights[index]! * tables.gain(set, place);
  });
  const repair: Move = { do: 'repair', index: tables.causes[place]! };
  if (cures > 0.6 * at.mass) return repair;
  const rates = ahead.scoreChecks(at).map(({ check, parts }) => {
    const told = entropy(at.weights) - parts.reduce((all, part) => all + entropy(part), 0);
    return { check, rate: told / tables.costs.cost(check, at.opened, at.standing) };
  });
  const best = rates.toSorted((one, other) => other.rate - one.rate)[0];
  return best === undefined ? repair : { do: 'check', index: best.check };
};
