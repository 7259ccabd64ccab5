import { withFinding, type ReasoningInput } from '../belief/evidence.ts';
import { complaintOf } from '../belief/model.ts';

/** What the complaint's own test said last: still there, gone, or not asked since a repair. */
export function complaintNow(input: ReasoningInput): 'there' | 'gone' | 'unknown' {
  const { group } = complaintOf(input.model);
  const last = input.evidence.findLast((finding) => finding.group === group);
  if (last === undefined || last.at < input.repairs || (last.lo === 0 && last.hi > 0))
    return 'unknown';
  return last.hi === 0 ? 'gone' : 'there';
}

/**
 * What every step but the complaint's own test is weighed by: where nobody has asked since a repair,
 * the complaint counts as still there, for else there is nothing left to do.
 */
export function asStillThere(input: ReasoningInput): ReasoningInput {
  if (complaintNow(input) !== 'unknown') return input;
  const { complaint } = input.model;
  const { group, results } = complaintOf(input.model);
  return withFinding(input, { check: complaint, group, lo: 1, hi: results.length - 1 });
}
