import { firstOf, good, type Parsed } from '../../problem.ts';
import { bareTree } from '../../tree/own/bare.ts';
import { misfit } from '../../tree/fit.ts';
import { fileOf } from '../../tree/written/settle.ts';
import type { ActionOf } from '../action.ts';
import { parseSheet } from '../book.ts';
import type { PayloadOf } from '../event.ts';
import { shopOf } from '../header/header.ts';
import { currentLeg, workerAt, type Story } from '../story.ts';
import { factsFrom } from '../vehicle/fact.ts';
import { treeNamed, unsaid, type Found } from './lookup.ts';
import { accept, refuse, type Refused, type Ruling, type World } from './ruling.ts';

/** Goes on with another tree in the same session, where this one leads; findings and accesses go along. */
export function leg(action: ActionOf<'leg'>, story: Story, world: World): Ruling {
  const found = otherTree(action.tree, story, world);
  if ('kind' in found) return found;
  const known = knownFor(action, found);
  if (known.kind === 'bad') return { kind: 'refused', problem: firstOf(known.problems) };
  const { reason } = action;
  return accept([{ ...legOf(found), ...(reason !== undefined && { reason }), ...known.value }]);
}

/**
 * Takes up another complaint of the owner on the same job; a closed job is opened again for it. What
 * is known of the vehicle, how it stands and what was found goes along.
 */
export function complaint(action: ActionOf<'complaint'>, story: Story, world: World): Ruling {
  const found = otherTree(action.tree, story, world);
  if ('kind' in found) return found;
  const known = knownFor(action, found);
  if (known.kind === 'bad') return { kind: 'refused', problem: firstOf(known.problems) };
  const wrong = misfit(found.tree, { ...story.facts, ...known.value.facts });
  if (wrong !== undefined) return { kind: 'refused', problem: wrong };
  const words = action.words?.trim() ?? '';
  return takeUp(story, {
    ...legOf(found),
    complaint: words === '' ? {} : { words },
    ...known.value,
  });
}

/** Another complaint of the owner that no tree is about; what is known of the job goes along. */
export function ownLeg(
  { say, about, reason }: ActionOf<'own-leg'>,
  story: Story,
  world: World,
): Ruling {
  const wrong = unsaid(say.trim(), 'what the complaint is');
  if (wrong !== undefined) return wrong;
  const tree = bareTree(
    say,
    about,
    story.legs.map((leg) => leg.tree.id),
  );
  return takeUp(story, {
    ...legOf({ tree, shop: world.shop ?? currentLeg(story).shop }),
    complaint: {},
    ...(reason !== undefined && { reason }),
  });
}

/** The leg of a complaint of its own; a closed job is opened again for it. */
const takeUp = (story: Story, leg: PayloadOf<'leg'>): Ruling =>
  accept([...(story.closed === undefined ? [] : [{ kind: 'reopened' as const }]), leg]);

/** A tree of the library that is not the one walked now. */
function otherTree(id: string, story: Story, world: World): Found | Refused {
  const found = treeNamed(id, world);
  if ('kind' in found) return found;
  if (currentLeg(story).tree.id === id)
    return refuse('same-tree', `"${id}" is the tree that is being walked.`, 'Go on with it.', id);
  return found;
}

const legOf = ({ tree, shop }: Found): PayloadOf<'leg'> => ({
  kind: 'leg',
  tree: tree.id,
  whole: fileOf(tree),
  shop: shopOf(tree, shop),
});

/** What is told of the vehicle for this complaint, and the figures of its book that were given. */
function knownFor(
  { facts = {}, sheet = {} }: ActionOf<'complaint' | 'leg'>,
  { tree, shop }: Found,
): Parsed<Pick<PayloadOf<'leg'>, 'facts' | 'sheet'>> {
  const read = factsFrom(facts, shop);
  if (read.kind === 'bad') return read;
  const figures = parseSheet(sheet, tree, shop);
  if (figures.kind === 'bad') return figures;
  return good({
    ...(Object.keys(read.value).length > 0 && { facts: read.value }),
    ...(Object.keys(figures.value).length > 0 && { sheet: figures.value }),
  });
}

/** Says who works from here on; who works already is not said again. */
export const worker = ({ who }: ActionOf<'worker'>, story: Story): Ruling =>
  workerAt(story) === who
    ? refuse('same-worker', `"${who}" works on it already.`, 'Nothing needs to be said.', who)
    : accept([{ kind: 'worker', who }]);
