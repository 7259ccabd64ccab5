import type { Problem } from '../problem.ts';
import { meant, nearest } from '../trade/units/nearest.ts';

export type Named = Readonly<Record<string, unknown>>;

/** The problem of a name that leads nowhere, with the nearest name that does. */
export const unknown = (what: string, id: string, path: string, owner: Named): Problem =>
  unknownAmong(what, id, path, Object.keys(owner));

/** The same of a name that lives in `shop.json`: where to look for one, and where to add one. */
export function unknownInShop(what: string, id: string, path: string, owner: Named): Problem {
  const near = nearest(id, Object.keys(owner));
  const [word = id] = id.split('-');
  const look = `Look for one: droplight trees shop ${word}; or add it to shop.json beside your tree.`;
  return {
    ...unknown(what, id, path, owner),
    mend: near.length > 0 ? `Did you mean ${near.join(' or ')}? ${look}` : look,
  };
}

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
