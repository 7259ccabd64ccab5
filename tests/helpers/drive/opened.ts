import { beforeProof } from '../../../src/core/session/apart/before-proof.ts';
import type { Story } from '../../../src/core/session/story.ts';

/** What the screens name before a proof as open since the complaint showed. */
export const opened = (story: Story): readonly string[] =>
  beforeProof(story).flatMap((one) => (one.kind === 'access' ? [one.access] : []));
