import {
  gradedNames,
  sidesOf,
  suspectsNow,
  type SideWords,
} from '../../core/reason/history/suspect-words.ts';
import { currentLeg } from '../../core/session/story.ts';
import { hintMinutes } from '../../core/session/rules/practice.ts';
import { adviceIsHint } from '../practice-rules.ts';
import type { OpenSession } from '../state.ts';
import type { DueOnScreen } from './question.ts';

/** What a page or a line of the foot stands beside: the check on screen, or none. */
export type Before = { readonly check: string | undefined };

/** The check that looks for a cause on screen, or that a safeguard puts first; a proof looks for none. */
export function beforeNow(due: DueOnScreen | undefined): Before {
  if (due?.blocker.kind === 'safeguard') return { check: due.blocker.holds[0].check };
  return { check: due?.asked?.purpose === 'proof' ? undefined : due?.asked?.id };
}

/**
 * The suspects in words: what the check on screen would part, a row a side (`EITHER`, `OR`), in one
 * row where there is no room for more; else by how strongly they are suspected.
 */
export function suspectRows(
  session: OpenSession,
  { check }: Before,
  { rows, columns }: { readonly rows: number; readonly columns: number },
): readonly string[] {
  const { story, advice, unadvised } = session;
  if (advice === undefined && unadvised === adviceIsHint)
    return [`SUSPECTS  hidden: A is a hint (${hintMinutes} min)`];
  if (advice === undefined)
    return [unadvised === undefined ? 'SUSPECTS  ...' : 'SUSPECTS  cannot be told (w says why)'];
  const { tree } = currentLeg(story);
  const suspects = suspectsNow(advice);
  const sides = check === undefined ? [] : sidesOf(tree, check, suspects);
  if (sides.length === 0) {
    const lead = advice.because.unlistedLeads ? 'none of the listed fits well; ' : '';
    const graded = gradedNames(tree, suspects).join('; ');
    return [`SUSPECTS  ${lead}${graded === '' ? 'none is left' : graded}`];
  }
  return sides.length > rows ? [inOneRow(sides, columns)] : sideRows(sides, columns);
}

/** Columns of the name that begins a row of the foot. */
const tag = 10;

/** What shows a side gives way to the first of its names, down to a few letters. */
const sideRows = (sides: readonly SideWords[], columns: number): readonly string[] =>
  sides.map(({ shows, names }, index) => {
    const room = columns - tag - 2;
    const most = Math.min(Math.floor(room / 2), room - names(0).length);
    const label = `${cutTo(shows, Math.max(leastShown, most))}: `;
    const begin = `${(index === 0 ? 'EITHER' : 'OR').padEnd(tag)}${label}`;
    return `${begin}${names(columns - begin.length)}`;
  });

const leastShown = 12;

const between = '   OR   ';

/** The sides without what would show them: each has its share of the row. */
function inOneRow(sides: readonly SideWords[], columns: number): string {
  const room = Math.floor((columns - tag - (sides.length - 1) * between.length) / sides.length);
  return `${'EITHER'.padEnd(tag)}${sides.map(({ names }) => names(room)).join(between)}`;
}

const cutTo = (text: string, columns: number): string =>
  text.length <= columns ? text : `${text.slice(0, Math.max(1, columns - 1)).trimEnd()}…`;
