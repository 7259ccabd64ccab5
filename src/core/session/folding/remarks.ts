import type { remarkKinds } from '../kinds/remarks.ts';
import { nothing, type Folding } from './draft.ts';

/** What was said and kept beside the steps. */
export const remarkFolding: Folding<keyof typeof remarkKinds> = {
  noted: nothing,
  photographed: ({ kind: _, ...said }, draft, { n, stamp }) =>
    draft.photos.push({ ...said, n, stamp }),
  timer: nothing,
  'part-bought': ({ kind: _, ...said }, draft, { n, stamp }) =>
    draft.bought.push({ ...said, n, stamp }),
  limit: ({ kind: _, ...said }, draft, { n, stamp }) => {
    draft.limit = { ...said, n, stamp };
  },
  'follow-up': ({ kind: _, ...said }, draft, { n, stamp }) =>
    draft.followUps.push({ ...said, n, stamp }),
};
