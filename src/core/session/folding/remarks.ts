import type { remarkKinds } from '../kinds/remarks.ts';
import { spanOf } from '../time.ts';
import { nothing, type Folding } from './draft.ts';

/** What was said and kept beside the steps. */
export const remarkFolding: Folding<keyof typeof remarkKinds> = {
  noted: nothing,
  photographed: ({ kind: _, ...said }, draft, { n, stamp }) =>
    draft.photos.push({ ...said, n, stamp }),
  timer: ({ kind: _, ...said }, draft, { n, stamp }) =>
    draft.timers.push({ ...said, n, stamp, began: spanOf(draft.time) }),
  'timer-off': ({ of }, draft) => {
    draft.timers = draft.timers.filter(({ n }) => n !== of);
  },
  'part-bought': ({ kind: _, ...said }, draft, { n, stamp }) =>
    draft.bought.push({ ...said, n, stamp }),
  limit: ({ kind: _, ...said }, draft, { n, stamp }) => {
    draft.limit = { ...said, n, stamp };
  },
  baseline: ({ kind: _, ...said }, draft, { n, stamp }) => {
    draft.baseline = [
      ...draft.baseline.filter(({ item }) => item !== said.item),
      { ...said, n, stamp },
    ];
  },
  'follow-up': ({ kind: _, ...said }, draft, { n, stamp }) =>
    draft.followUps.push({ ...said, n, stamp }),
};
