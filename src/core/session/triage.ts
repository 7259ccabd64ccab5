import { fromLegs, type Standpoint } from './story.ts';
import { lookAt } from '../tree/looked.ts';
import type { Tree } from '../tree/model.ts';

/** Why a cause is handed to inspection and not mended here: its tree only sorts, or sorts this one out. */
export const triageOfCause = ({ triage, causes }: Tree, cause: string): string | undefined =>
  triage ?? causes[cause]?.triage;

/**
 * Why this vehicle goes to inspection: a tree that only sorts was walked in this job, or a cause was
 * named that goes there. Undefined where neither is so, and the job may end as fixed.
 */
export const triageOf = (
  story: Pick<Standpoint, 'legs' | 'condemned' | 'findings'>,
): string | undefined => fromLegs(story, ({ tree }) => tree.triage) ?? namedTriage(story);

/** By a cause that was named and stands: not looked at afterwards and found not to be it. */
const namedTriage = ({
  legs,
  condemned,
  findings,
}: Pick<Standpoint, 'legs' | 'condemned' | 'findings'>): string | undefined =>
  condemned
    .filter(({ n, cause }) => !findings.some((one) => one.n > n && one.check === lookAt(cause)))
    .map(({ n, cause }) => legs.findLast(({ since }) => since < n)?.tree.causes[cause]?.triage)
    .find((why) => why !== undefined);

/** What is told where a cause is named that goes to inspection: why, and what to tell the inspection. */
export const handOver = ({ causes }: Tree, triage: string, cause: string): string =>
  [`Handed to inspection: ${triage}`, ...(causes[cause]?.repair.do ?? [])].join(' ');
