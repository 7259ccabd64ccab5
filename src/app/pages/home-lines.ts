import { matching, type Search } from '../keys/sought.ts';
import type { SessionLine } from '../../core/session/name.ts';

/** What Home offers; the line for picking up is there only when there is something to pick up. */
export type HomeLine =
  | { readonly kind: 'pick-up'; readonly session: SessionLine }
  | { readonly kind: 'start' }
  | { readonly kind: 'list' }
  | { readonly kind: 'vehicles' }
  | { readonly kind: 'figures' }
  | { readonly kind: 'settings' }
  | { readonly kind: 'quit' };

export function homeLines(sessions: readonly SessionLine[]): readonly HomeLine[] {
  const open = sessions.find(({ closed }) => !closed);
  return [
    ...(open === undefined ? [] : [{ kind: 'pick-up' as const, session: open }]),
    { kind: 'start' },
    { kind: 'list' },
    { kind: 'vehicles' },
    { kind: 'figures' },
    { kind: 'settings' },
    { kind: 'quit' },
  ];
}

/** The sessions that have what is sought in their names. */
export const sessionsShown = (
  sessions: readonly SessionLine[],
  { sought }: Search,
): readonly SessionLine[] => matching(sessions, sought, ({ name }) => name.replaceAll('-', ' '));
