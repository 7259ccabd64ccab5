import { partedBy, type Weighed } from '../../reason/belief/parting.ts';
import type { Finding } from '../../session/story.ts';
import type { AccountContext } from '../context.ts';
import { isCured } from './cure.ts';
import { causeIn, joined } from '../words/wording.ts';

/** A suspect under this chance is not worth asking after. */
const worthAsking = 0.05;
/** Of a side so many are named. */
const mostNamed = 2;

/**
 * What a check was to tell apart, from the rows of its tree: the suspects by what they would show.
 * `to tell the points from the condenser`; nothing where it parts none, or the complaint is gone.
 */
export function whyWords(context: AccountContext, finding: Finding): string {
  const { story } = context;
  const before = context.stepAt(finding.n)?.before;
  const tree = story.legs[finding.leg]?.tree;
  if (before === undefined || tree === undefined || isCured(context, finding.n)) return '';
  if (finding.proof || tree.complaint.confirm === finding.check) return '';
  const suspects: readonly Weighed[] = [...before]
    .filter(([id, chance]) => chance >= worthAsking && Object.hasOwn(tree.causes, id))
    .toSorted(([, one], [, other]) => other - one);
  const sides = partedBy(tree, finding.check, suspects)?.sides ?? [];
  const [one, other] = sides.map((side) => namesOf(side.suspects));
  if (one === undefined || other === undefined) return '';
  return `to tell ${one} from ${other}`;

  function namesOf(ids: readonly string[]): string {
    const [first = '', second = ''] = ids;
    const chanceOf = (id: string): number => before?.get(id) ?? 0;
    const both = chanceOf(second) * 2 >= chanceOf(first) ? ids : ids.slice(0, 1);
    return joined(both.slice(0, mostNamed).map((id) => causeIn(story, id, finding.leg)));
  }
}
