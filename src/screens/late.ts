import { Runner } from '../app/run.ts';
import { update } from '../app/update.ts';
import { inner } from './inner.tsx';

/** What the first frame does without: loaded in one piece behind it. */
export const late = { Runner, update, inner };
