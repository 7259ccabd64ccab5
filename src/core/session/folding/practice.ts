import type { practiceKinds } from '../kinds/practice.ts';
import type { Folding } from './draft.ts';

/** What only practice on a hidden fault has. */
export const practiceFolding: Folding<keyof typeof practiceKinds> = {
  hinted: ({ kind: _, ...said }, draft, { n, stamp }) => draft.hints.push({ ...said, n, stamp }),
  revealed: ({ kind: _, ...said }, draft, { n, stamp }) => {
    draft.revealed = { ...said, n, stamp };
  },
};
