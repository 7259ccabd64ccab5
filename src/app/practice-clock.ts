import { practiceNow } from '../core/reason/practice/minutes.ts';
import { isPractice } from '../core/session/header/is-practice.ts';
import type { Stamp } from '../core/session/kinds/shapes.ts';
import type { OpenSession } from './state.ts';

/** The time that the screens show: the planned one in practice, that of the wall in a job. */
export const nowIn = ({ story }: Pick<OpenSession, 'story'>, now: Stamp): Stamp =>
  isPractice(story.header) ? practiceNow(story) : now;
