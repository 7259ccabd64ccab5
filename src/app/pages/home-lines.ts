import { matching, type Search } from '../keys/sought.ts';
import type { SessionLine } from '../../core/session/name.ts';

/** What Home offers; the line for picking up is there only when there is something to pick up. */
export type HomeLine =
  | { readonly kind: 'pick-up'; readonly session: SessionLine }
  | { readonly kind: 'start' }
  | { readonly kind: 'list' }
  | { readonly kind: 'vehicles' }
  | { readonly kind: 'jobs' }
  | { readonly kind: 'figures' }
  | { readonly kind: 'settings' }
  | { readonly kind: 'quit' };

export function homeLines(sessions: readonly SessionLine[]): readonly HomeLine[] {
  const open = sessions.find(({ state }) => state === 'open');
  return [
    ...(open === undefined ? [] : [{ kind: 'pick-up' as const, session: open }]),
    { kind: 'start' },
    { kind: 'list' },
    { kind: 'vehicles' },
    { kind: 'figures' },
    { kind: 'settings' },
    { kind: 'jobs' },
    { kind: 'quit' },
  ];
}

/** `2026-04-11 10:42  no supply, Orchard van`: whose it is as its first line says, or out of its file's name. */
export function sessionWords({ name, of, practice }: SessionLine): string {
  const word = practice === true ? 'PRACTICE ' : '';
  const parts = /^(\d{4}-\d\d-\d\d)-(\d\d)(\d\d)-(.+)$/.exec(name);
  if (parts === null) return of === undefined ? name : `${word}${ofWords(of)}`;
  const [, day, hour, minute, rest = ''] = parts;
  const what = of === undefined ? rest.replaceAll('-', ' ') : ofWords(of);
  return `${day} ${hour}:${minute}  ${word}${what}`;
}

/** The complaint first: a long name of a vehicle is cut at its end. */
const ofWords = ({ tree, vehicle }: NonNullable<SessionLine['of']>): string =>
  `${tree.replaceAll('-', ' ')}, ${vehicle}`;

/** `fixed`, `handed on`, `open`; empty where it is not known. */
export const stateWords = ({ state }: SessionLine): string =>
  state === 'unknown' ? '' : state.replaceAll('-', ' ');

/** The sessions that have what is sought in what the list shows of them. */
export const sessionsShown = (
  sessions: readonly SessionLine[],
  { sought }: Search,
): readonly SessionLine[] =>
  matching(sessions, sought, (line) => `${sessionWords(line)} ${stateWords(line)}`);
