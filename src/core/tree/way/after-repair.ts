import { checksBehind } from './behind.ts';
import type { Done } from './known.ts';
import type { Tree } from '../model.ts';
import { holdBefore, wayAfter, type Way } from './hold.ts';
import { ask, nextOnWay, type OnWay } from './way.ts';

/**
 * What follows a repair that is not proven yet: first the checks that it asks to have repeated (once
 * the complaint was tried, they are not asked for any more), then
 * those that look for what may have brought the cause about, then the complaint's own test, each
 * behind its safeguards. A safeguard that its check has found shut again says that the repair was not
 * the end of it: the way goes on from there.
 * @param done everything up to the repair and what was answered since
 */
export function nextAfterRepair(tree: Tree, done: readonly Done[], cause: string): OnWay {
  const way = wayAfter(tree, done);
  const since = done.slice(done.findLastIndex(({ kind }) => kind === 'repaired') + 1);
  const answered = since.flatMap((one) => ('check' in one ? [one.check] : []));
  const confirm = tree.complaint.confirm;
  const repeat = answered.includes(confirm)
    ? undefined
    : (tree.causes[cause]?.repair.then ?? []).find(
        (id) => id !== confirm && Object.hasOwn(tree.checks, id) && !answered.includes(id),
      );
  const [behind] = unasked(way, cause);
  const wanted = repeat ?? behind ?? confirm;
  const next = ask(way, wanted);
  if (next.kind === 'check') return next;
  const doubted = doubtedGate(way, wanted);
  if (doubted !== undefined && !answered.includes(doubted))
    return { kind: 'check', check: doubted, before: wanted };
  const to = nextOnWay(tree, done);
  return to.kind === 'exhausted' ? next : to;
}

/** The safeguard that holds a step only because nobody could tell: it is asked once more before the proof. */
function doubtedGate(way: Way, step: string): string | undefined {
  const hold = holdBefore(way, step);
  if (hold?.kind !== 'shut' || hold.gate.kind !== 'safeguard') return undefined;
  return way.known(hold.gate.check) === 'passed' ? hold.gate.check : undefined;
}

const unasked = ({ tree, known, mended }: Way, cause: string): readonly string[] =>
  checksBehind(tree, cause, { known: (check) => known(check) !== undefined, mended });

/** Checks that nobody made although they look for what may have brought a mended cause about. */
export function leftUnasked(tree: Tree, done: readonly Done[]): readonly string[] {
  const way = wayAfter(tree, done);
  return way.mended.flatMap((cause) => unasked(way, cause));
}
