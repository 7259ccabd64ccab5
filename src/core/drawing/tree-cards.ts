import type { Lead, Tree } from '../tree/model.ts';
import { parseNext, type Next } from '../tree/way/next.ts';
import { wayOrder } from './tree-page.ts';

/** One result of a check, or one of its leads: what it says, and where it leads; nowhere: to whatever is open. */
export type CardRow = {
  readonly label: string;
  readonly next: Next | undefined;
  /** What stands where it leads, if that is no check of this tree. */
  readonly words: string;
};

/** A check as a card of the drawing. */
export type Card = {
  readonly id: string;
  readonly title: string;
  /** What it is to the tree, if it is more than one check among others. */
  readonly part: string;
  readonly rows: readonly CardRow[];
};

/** The checks of a tree as cards, by the numbers that the page of text has too. */
export function treeCards(tree: Tree): readonly Card[] {
  const order = wayOrder(tree);
  return order.flatMap((id, index) => {
    const check = tree.checks[id];
    if (check === undefined) return [];
    const rows = check.results.flatMap(({ label, next, leads = [], reason }) => [
      ...leads.map((lead) =>
        cardRow(tree, `${label}, where ${shownWords(tree, order, lead)}`, lead.go),
      ),
      cardRow(tree, leads.length === 0 ? label : `${label}, else`, next, reason),
    ]);
    return [{ id, title: `${index + 1}. ${check.ask}`, part: partOf(tree, id), rows }];
  });
}

function partOf({ complaint, baseline, start }: Tree, id: string): string {
  if (id === complaint.confirm) return 'the complaint, made to show itself';
  if (id === start) return 'the way begins here';
  return baseline.includes(id) ? 'baseline' : '';
}

/** What must have been shown for a lead to hold, the checks by their numbers. */
const shownWords = ({ checks }: Tree, order: readonly string[], lead: Lead): string =>
  Object.entries(lead.if)
    .map(([id, wanted]) => {
      const labels = (checks[id]?.results ?? []).filter((one) => wanted.includes(one.id));
      return `no. ${order.indexOf(id) + 1} showed ${labels.map(({ label }) => label).join(' or ')}`;
    })
    .join(' and ');

function cardRow(tree: Tree, label: string, go: string | undefined, reason?: string): CardRow {
  const next = go === undefined ? undefined : parseNext(go);
  return { label, next, words: wordsOf(tree, next, reason) };
}

function wordsOf(tree: Tree, next: Next | undefined, reason?: string): string {
  switch (next?.kind) {
    case undefined:
      return 'the next check not done yet';
    case 'check':
      return '';
    case 'cause':
      return tree.causes[next.cause]?.name ?? next.cause;
    case 'tree':
      return `another complaint: ${next.tree.replaceAll('-', ' ')}`;
    case 'stop':
      return reason === undefined ? 'stop' : `stop: ${reason}`;
  }
}
