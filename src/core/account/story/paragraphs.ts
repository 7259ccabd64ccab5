import type { AccountContext } from '../context.ts';
import { isLong, type Group } from './gather.ts';
import { isTurn } from './meaning.ts';
import { isCured } from './cure.ts';

/** Sentences' worth of groups before a paragraph ends of itself. */
const mostGroups = 5;

/** A repair begins a paragraph, the checks after it another; a turn of the search and a proof end one. */
export function paragraphsOf(
  context: AccountContext,
  groups: readonly Group[],
): readonly (readonly Group[])[] {
  const paragraphs: Group[][] = [];
  for (const [index, group] of groups.entries()) {
    const current = paragraphs.at(-1);
    const before = groups[index - 1];
    if (current === undefined || before === undefined || isParted(context, before, group))
      paragraphs.push([group]);
    else if (current.length >= mostGroups && isFresh(context, group)) paragraphs.push([group]);
    else current.push(group);
  }
  return paragraphs;
}

function isParted(context: AccountContext, before: Group, group: Group): boolean {
  const [{ begins, finding }] = group.clauses;
  const [last] = before.clauses;
  if (begins || last.kind === 'proof' || isLong(last.noted ?? '')) return true;
  if (finding === undefined || last.kind === 'repair') return false;
  return isStep(before) && turns(context, before) && isFresh(context, group);
}

/** A step of the search that is no second try of the one before it, and no proof of what was done. */
const isFresh = (
  { repeated }: AccountContext,
  { clauses: [{ n, kind, finding }] }: Group,
): boolean => finding !== undefined && kind !== 'proof' && !repeated.has(n);

/** What is said beside the findings ends no paragraph. */
const isStep = ({ clauses: [{ finding }] }: Group): boolean => finding !== undefined;

const turns = (context: AccountContext, { clauses }: Group): boolean =>
  clauses.some(({ n }) => {
    const step = context.stepAt(n);
    return step !== undefined && !isCured(context, n) && isTurn(context, step);
  });
