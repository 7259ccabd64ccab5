import type { Tree } from '../../tree/model.ts';
import { fileOf } from '../../tree/written/settle.ts';
import type { Settings } from '../../settings.ts';
import { parseCurrency } from '../../trade/money/money.ts';
import { version } from '../../version.ts';
import { shopOf, type Header } from './header.ts';
import { sessionId } from '../name.ts';

/** What must be known to begin a session. */
export type NewSession = Omit<Header, 'format' | 'id' | 'tool' | 'opened' | 'tree' | 'trees'> & {
  readonly tree: Tree;
};

/** The currency of a new job, where one is set that is known. */
export function currencyOf({ currency: set }: Settings): Pick<Header, 'currency'> {
  const currency = parseCurrency(set);
  return currency === undefined || currency === '' ? {} : { currency };
}

/** The first line of a new session. Its `id` is made into a free file name when it is written. */
export function newHeader(about: NewSession, at: string): Header {
  const { tree, shop, vehicle, ...rest } = about;
  return {
    format: 1,
    id: sessionId(at, vehicle.name, tree.id),
    tool: `droplight ${version}`,
    opened: at,
    ...rest,
    vehicle,
    tree: tree.id,
    trees: { [tree.id]: fileOf(tree) },
    shop: shopOf(tree, shop),
  };
}
