import { currentLeg, isHealthy, type Story } from '../story.ts';
import { apartNow, leftApart, type ApartThing } from './apart.ts';

/**
 * What is off, open or on for a while before the proof and was not when the complaint last showed: the
 * same vehicle is tried again, or it proves something else. What the test itself needs open is not among it,
 * nor what somebody said to leave; how the battery stands is asked with the test itself.
 */
export function beforeProof(story: Story): readonly ApartThing[] {
  const { tree } = currentLeg(story);
  const { confirm } = tree.complaint;
  const check = tree.checks[confirm];
  const shown = story.findings.findLast((one) => one.check === confirm && !isHealthy(story, one));
  const left = new Set(story.leftApart.flatMap(({ things }) => things));
  return apartNow(story).filter(
    (thing) =>
      thing.kind !== 'battery' &&
      thing.n > (shown?.n ?? 0) &&
      !left.has(thing.n) &&
      !(thing.kind === 'access' && check?.access.includes(thing.access)),
  );
}

/** What is not back yet, each as a clause of its own. */
export const notBackWords = (story: Story): readonly string[] =>
  beforeProof(story).map((thing) => leftApart(story, thing));
