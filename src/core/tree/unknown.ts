import type { Problem } from '../problem.ts';
import { meant } from '../trade/units/nearest.ts';

export type Named = Readonly<Record<string, unknown>>;

/** The problem of a name that leads nowhere, with the nearest name that does. */
export const unknown = (what: string, id: string, path: string, owner: Named): Problem =>
  unknownAmong(what, id, path, Object.keys(owner));

export function unknownAmong(
  what: string,
  id: string,
  path: string,
  offered: readonly string[],
): Problem {
  return {
    code: `unknown-${what}`,
    path,
    value: id,
    message: `There is no ${what} "${id}".`,
    mend: offered.length > 0 ? meant(id, offered) : 'Add it, or name one that is there.',
  };
}
