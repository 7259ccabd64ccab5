import { clockTime } from '../../core/session/clock.ts';
import { stateOf } from '../../core/session/record/damage.ts';
import { isPractice } from '../../core/session/header/is-practice.ts';
import { currentLeg } from '../../core/session/story.ts';
import { count } from '../../core/text.ts';
import type { OpenSession, State } from '../state.ts';
import { nowIn } from '../practice-clock.ts';
import { workedNow } from './worked.ts';

/** Ours, or what must be known of the record before anything that stands below. */
export function headWord(session: OpenSession | undefined): string {
  const state = stateOf(session?.damage ?? []);
  return state === 'altered' || state === 'cut short' ? `RECORD ${state.toUpperCase()}` : ourName;
}

/** Whose vehicle it is; in practice it is nobody's, and that is said in its place. */
const nameOf = ({ header }: OpenSession): string =>
  isPractice(header) ? 'PRACTICE' : header.vehicle.name;

const ourName = 'DROPLIGHT';

/** Who leads is said where it is not the tree. The name gives way first, then a long vehicle; never the complaint. */
export function headLeft(
  { settings: { lead }, screen }: State,
  session: OpenSession,
  columns: number,
): string {
  const name = nameOf(session);
  // A replay is led by nobody.
  const leads = lead === 'quicker' && screen.kind !== 'replay' ? ' · quicker leads' : '';
  const what = ` · ${currentLeg(session.story).tree.id.replaceAll('-', ' ')}${leads}`;
  const word = `${headWord(session)}   `;
  const whole = `${word}${name}${what}`;
  if (whole.length <= columns) return whole;
  const before = headWord(session) === ourName ? '' : word;
  const room = columns - before.length - what.length;
  return `${before}${name.length <= room ? name : `${name.slice(0, Math.max(3, room - 1)).trimEnd()}…`}${what}`;
}

/** The clock, what was worked and what was looked at; a replay stands at what was told last. */
export function headRight({ screen, now }: State, session: OpenSession): string {
  const { story, events } = session;
  const last = events.at(-1);
  const done = count(new Set(story.findings.map(({ check }) => check)).size, 'check');
  // A replay stands at what was told last, not now.
  if (screen.kind === 'replay')
    return `${clockTime(last?.at ?? story.header.opened)}  ${hours(story.minutes)}  ${done}`;
  const then = nowIn(session, now);
  return `${clockTime(then.at)}  ${hours(workedNow(session, then))}  ${done}`;
}

/** `0 h 38 min`. */
const hours = (minutes: number): string =>
  `${Math.floor(minutes / 60)} h ${Math.floor(minutes % 60)} min`;
