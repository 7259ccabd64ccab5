import type { Handlers } from '../../dispatch.ts';
import type { Check, Repair } from '../../tree/model.ts';
import { neededBy, overAfter } from '../../tree/states.ts';
import type { Kind, Payload, PayloadOf } from '../event.ts';
import type { Stamp } from '../kinds/shapes.ts';
import { passedAt } from '../safeguard.ts';
import { currentLeg, type Finding, type Guarded, type Standpoint } from '../story.ts';

/** A story while it is being made. */
export type Draft = { -readonly [K in keyof Standpoint]: Mutable<Standpoint[K]> };

type Mutable<T> = T extends readonly (infer One)[] ? One[] : T;

/** Which event it is that says something, and whether it was put right afterwards. */
export type Mark = { readonly n: number; readonly stamp: Stamp; readonly corrected: boolean };

/** The kinds that the story is not made of: they are told from the record itself. */
export const nothing = (): void => {};

/** What kinds of events do to a story. */
export type Folding<K extends Kind> = Pick<
  Handlers<Payload, 'kind', [draft: Draft, mark: Mark], void>,
  K
>;

/** A finding as the story holds it, with what had been repaired before it. */
export function finding(
  draft: Draft,
  said: Omit<PayloadOf<'found'>, 'kind'>,
  { n, stamp, corrected }: Mark,
): Finding {
  const needed = currentLeg(draft).tree.checks[said.check]?.['only-while'];
  return {
    ...said,
    n,
    stamp,
    corrected,
    leg: draft.legs.length - 1,
    repairs: draft.repairs.length,
    proof: false,
    ...(needed !== undefined && draft.over.includes(needed) && { unsaid: true }),
  };
}

/** What a step that was done leaves of the states that pass. */
export function spend(draft: Draft, step: Check | Repair | undefined): void {
  if (step === undefined) return;
  const needed = 'results' in step ? neededBy(currentLeg(draft).tree, step) : undefined;
  draft.over = [...overAfter(draft.over, { brings: needed?.brings, spends: step.spends })];
}

/** Takes down which safeguards a step went past, as they stood before it. */
export function pass(
  draft: Draft,
  step: Guarded,
  despite: PayloadOf<'repaired'>['despite'],
  { n, stamp }: Mark,
): void {
  if (despite === undefined) return;
  const holds = passedAt(draft, step, despite.checks);
  if (holds.length > 0)
    draft.passed.push({ n, stamp, leg: draft.legs.length - 1, step, holds, why: despite.why });
}

/** Takes down which cautions were read, and for which step. */
export function acknowledge(
  draft: Draft,
  { n }: Mark,
  step: string,
  cautions: readonly string[],
): void {
  if (cautions.length > 0) draft.acknowledged.push({ n, step, cautions });
}
