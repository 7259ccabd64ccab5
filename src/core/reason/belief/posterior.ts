import { at } from '../../at.ts';
import type { Observation } from './model.ts';
import { bad, good } from '../../problem.ts';
import type { Parsed } from '../../problem.ts';
import type { ReasoningInput } from './evidence.ts';
import { compile } from './compile.ts';
import type { Compiled } from './compile.ts';
import { orderOf } from './order.ts';
import type { Order } from './order.ts';
import { runBack, runForward } from './forward-backward.ts';
import { faultSets, logSum, SetWeigher, shortlist } from './fault-sets.ts';

export type Belief = {
  /** 'exact', or 'listed' where too many abnormal findings are open at once. */
  readonly kind: 'exact' | 'listed';
  /** By cause index: the chance that it is there now; 0 once it is repaired. */
  readonly chances: readonly number[];
  /** By cause index: the chance that it was there when the complaint was. */
  readonly atFirst: readonly number[];
  /** Natural logarithm of P(evidence); of what the list holds where the belief is listed. */
  readonly logEvidence: number;
  /** Share of the evidence that the belief rests on: 1 when exact, else "at least". */
  readonly coverage: number;
};

/** Abnormal findings open at once that the exact run takes on: 2^16 states. */
const greatestWidth = 16;

const impossible = bad({
  code: 'belief-impossible',
  message: 'These findings cannot all be true: no cause or set of causes explains them together.',
  mend: 'Correct the finding that was misread, or take the check that got worse again.',
  path: 'findings',
});

type Exact = { readonly atFirst: readonly number[]; readonly logEvidence: number };

function exactly(input: ReasoningInput, compiled: Compiled, order: Order): Exact {
  const priors = input.model.causes.map((cause) => cause.prior);
  const forward = runForward(order, compiled, priors);
  let logEvidence = Math.log(forward.end) + forward.logScale + Math.log(compiled.background.base);
  const atFirst = priors.map(() => 0);
  for (const cause of order.alone) {
    const prior = at(priors, cause);
    const present = prior * at(compiled.causes, cause).base;
    const both = present + (1 - prior);
    logEvidence += Math.log(both);
    atFirst[cause] = both > 0 ? present / both : 0;
  }
  if (logEvidence === -Infinity) return { atFirst, logEvidence };
  for (const [cause, chance] of runBack(order, compiled, priors, forward.messages))
    atFirst[cause] = chance;
  return { atFirst, logEvidence };
}

/** Drops what needs explaining, the commonest first, until the exact run can take it. */
function relaxed(input: ReasoningInput): ReasoningInput {
  const backgroundChance = ({ check, lo }: Observation): number =>
    1 - at(at(input.model.checks, check).background, lo - 1);
  const abnormal = input.evidence
    .filter(({ lo }) => lo > 0)
    .toSorted((one, other) => backgroundChance(other) - backgroundChance(one));
  for (let dropped = 1; dropped < abnormal.length; dropped += 1) {
    const gone = new Set(abnormal.slice(0, dropped));
    const evidence = input.evidence.map((one) => (gone.has(one) ? { ...one, lo: 0 } : one));
    const easier = { ...input, evidence };
    if (orderOf(compile(easier)).width <= greatestWidth) return easier;
  }
  return { ...input, evidence: input.evidence.map((one) => ({ ...one, lo: 0 })) };
}

/**
 * The list of fault sets instead of the exact run. What it leaves out is bounded from the
 * evidence with the excess findings left open, which is never less than the whole.
 */
function fromSets(input: ReasoningInput, compiled: Compiled): Parsed<Belief> {
  const weigher = new SetWeigher(input, compiled);
  const ids = input.model.causes.map((cause) => cause.id);
  const single = ids.map((_, cause) => weigher.log([cause]));
  const listed = faultSets(input, shortlist(single, ids));
  if (listed.logEvidence === -Infinity) return impossible;
  const easier = relaxed(input);
  const easierCompiled = compile(easier);
  const most = exactly(easier, easierCompiled, orderOf(easierCompiled)).logEvidence;
  const atFirst = ids.map((_, cause) =>
    Math.min(
      1,
      listed.sets.reduce((all, set) => all + (set.causes.includes(cause) ? set.chance : 0), 0),
    ),
  );
  return good({
    kind: 'listed',
    atFirst,
    chances: onlyNow(input, atFirst),
    logEvidence: logSum([listed.logEvidence]),
    coverage: Math.min(1, Math.exp(listed.logEvidence - most)),
  });
}

const onlyNow = (input: ReasoningInput, atFirst: readonly number[]): readonly number[] =>
  atFirst.map((chance, cause) =>
    input.repairedAt[cause] === Infinity && at(input.arrivedAt, cause) <= input.repairs
      ? chance
      : 0,
  );

/** The chance of every cause after all that was found and repaired, or why there is none. */
export function believe(input: ReasoningInput): Parsed<Belief> {
  const compiled = compile(input);
  const order = orderOf(compiled);
  if (order.width > greatestWidth) return fromSets(input, compiled);
  const { atFirst, logEvidence } = exactly(input, compiled, order);
  if (logEvidence === -Infinity) return impossible;
  return good({
    kind: 'exact',
    atFirst,
    chances: onlyNow(input, atFirst),
    logEvidence,
    coverage: 1,
  });
}
