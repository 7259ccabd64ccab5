import { at } from '../../at.ts';
import { withFinding, type ReasoningInput } from '../belief/evidence.ts';
import { believe } from '../belief/posterior.ts';

/** How likely each result of a check is by all that is known, by the id of the result; empty where none can be told. */
export function foreseenResults(input: ReasoningInput, id: string): ReadonlyMap<string, number> {
  const index = input.model.checks.findIndex((check) => check.id === id);
  const now = index < 0 ? undefined : believe(input);
  if (now === undefined || now.kind === 'bad' || now.value.kind !== 'exact') return new Map();
  const { group, results } = at(input.model.checks, index);
  const before = now.value.logEvidence;
  return new Map(
    results.flatMap((result, place) => {
      const finding = { check: index, group, lo: place, hi: place };
      const then = believe(withFinding(input, finding));
      if (then.kind === 'bad' || then.value.kind !== 'exact') return [];
      return [[result, Math.min(1, Math.exp(then.value.logEvidence - before))] as const];
    }),
  );
}
