import type { stepKinds } from '../kinds/steps.ts';
import { withBrought } from '../../tree/brought.ts';
import { broughtBack, overAfter } from '../../tree/states.ts';
import { lookAt, notThis, withLook } from '../../tree/looked.ts';
import { currentLeg } from '../story.ts';
import { finding, spend, pass, acknowledge, nothing, type Folding, type Draft } from './draft.ts';

/** What was looked at, named, mended and proved. */
export const stepFolding: Folding<keyof typeof stepKinds> = {
  'check-begun': ({ check, acknowledged, brought = [], despite }, draft, mark) => {
    pass(draft, { kind: 'check', check }, despite, mark);
    draft.begun = { n: mark.n, check };
    const { tree } = currentLeg(draft);
    draft.over = [...overAfter(draft.over, { brings: broughtBack(tree, brought) })];
    acknowledge(draft, mark, `check:${check}`, acknowledged);
  },
  expected: ({ check, result }, draft, { n, stamp }) =>
    draft.expected.push({ n, stamp, check, result }),
  found: ({ kind: _, ...said }, draft, mark) => {
    draft.findings.push(finding(draft, said, mark));
    spend(draft, currentLeg(draft).tree.checks[said.check]);
    draft.skipped = draft.skipped.filter(({ check }) => check !== said.check);
    draft.unsure = draft.unsure.filter(({ check }) => check !== said.check);
  },
  unsure: ({ check }, draft, { n, stamp }) => {
    draft.unsure.push({ n, stamp, check });
    spend(draft, currentLeg(draft).tree.checks[check]);
  },
  skipped: ({ check, reason }, draft, { n, stamp }) =>
    draft.skipped.push({ n, stamp, check, reason }),
  condemned: ({ cause, found, acknowledged = [], despite }, draft, mark) => {
    const { n, stamp } = mark;
    pass(draft, { kind: 'repair', cause }, despite, mark);
    draft.condemned.push({ n, stamp, cause, ...(found !== undefined && { found }) });
    acknowledge(draft, mark, `cause:${cause}`, acknowledged);
  },
  'not-this': ({ cause, acknowledged, told }, draft, mark) => {
    lookUp(draft, cause);
    const seen = { check: lookAt(cause), result: notThis, ...(told !== undefined && { told }) };
    draft.findings.push(finding(draft, seen, mark));
    acknowledge(draft, mark, `cause:${cause}`, acknowledged);
  },
  repaired: ({ kind: _, ...said }, draft, mark) => {
    const { n, stamp } = mark;
    pass(draft, { kind: 'repair', cause: said.cause }, said.despite, mark);
    draft.repairs.push({ ...said, n, stamp, leg: draft.legs.length - 1 });
    spend(draft, currentLeg(draft).tree.causes[said.cause]?.repair);
    acknowledge(draft, mark, `cause:${said.cause}`, said.acknowledged);
  },
  described: nothing,
  proved: ({ kind: _, good, ...said }, draft, mark) => {
    const proof = { ...finding(draft, said, mark), proof: true };
    draft.findings.push(proof);
    spend(draft, currentLeg(draft).tree.checks[said.check]);
    draft.proofs.push({ ...proof, good });
  },
  settled: ({ kind: _, ...said }, draft, { n, stamp }) => {
    draft.settled.push({ ...said, n, stamp });
    if (said.as === 'new-since') bring(draft, said.later);
  },
};

/** An open look at a cause is a check of the tree from here on. */
function lookUp(draft: Draft, cause: string): void {
  const leg = currentLeg(draft);
  draft.legs[draft.legs.length - 1] = { ...leg, tree: withLook(leg.tree, cause) };
}

/** A fault that came with the last repair before a finding may be a cause from here on. */
function bring(draft: Draft, later: number): void {
  const found = draft.findings.find(({ n }) => n === later);
  const leg = found && draft.legs[found.leg];
  const repaired = draft.repairs.findLast(({ n }) => n < later);
  if (found === undefined || leg === undefined || repaired === undefined) return;
  const tree = withBrought(leg.tree, { repair: found.repairs, repaired: repaired.cause, found });
  draft.legs[found.leg] = { ...leg, tree };
}
