import { fromLegs, type Standpoint } from './story.ts';
import type { Tree } from '../tree/model.ts';

/**
 * Why this vehicle goes to inspection whatever was found: a tree that only sorts was walked in this
 * job. Undefined where none was, and the job may end as fixed.
 */
export const triageOf = (story: Pick<Standpoint, 'legs'>): string | undefined =>
  fromLegs(story, ({ tree }) => tree.triage);

/** What is told where a tree that only sorts has a cause named: why, and what to tell the inspection. */
export const handOver = ({ causes }: Tree, triage: string, cause: string): string =>
  [`Handed to inspection: ${triage}`, ...(causes[cause]?.repair.do ?? [])].join(' ');
