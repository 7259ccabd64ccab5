import { failedRepairs, spentOn } from '../../account/blocks/ledger.ts';
import { complaintsOf } from '../../session/complaints.ts';
import type { Story } from '../../session/story.ts';
import { mendedIn, provenRepairs } from '../tally.ts';
import { commonColumns, commonValues, type Row, type Table } from './table.ts';

/** What was mended, and whether it helped. */
export const repairsTable: Table = {
  name: 'repairs',
  says: 'a repair that was made and not taken back',
  columns: [
    ...commonColumns,
    { name: 'n', kind: 'integer', says: 'number of its event in the session' },
    { name: 'recorded', kind: 'time', says: 'when it was recorded' },
    { name: 'tree', kind: 'text', says: 'id of the tree that named the cause' },
    { name: 'cause', kind: 'text', says: 'id of the cause in its tree' },
    { name: 'cause_name', kind: 'text', says: 'the cause in words' },
    { name: 'parts', kind: 'text', says: 'parts as typed, with "; " between; empty: none noted' },
    { name: 'parts_count', kind: 'integer', says: 'parts typed' },
    {
      name: 'minutes_typed',
      kind: 'real',
      says: 'minutes as the person noted them; null: not noted',
    },
    { name: 'took', kind: 'real', says: 'minutes between it and the event before, worked' },
    { name: 'planned', kind: 'real', says: 'minutes of the repair in its tree' },
    {
      name: 'helped',
      kind: 'flag',
      says: 'false: its proof failed and it cured nothing; null: not tried',
    },
    {
      name: 'weight',
      kind: 'real',
      says: 'share of a proven complaint that this cause has (1, or less where several were mended), on its last repair; else 0',
    },
  ],
  rows: (session) => {
    const { story } = session;
    const failed = failedRepairs(story);
    const weights = weightsIn(story, failed);
    const took = new Map(spentOn(story).steps.map(({ entry, worked }) => [entry.event.n, worked]));
    return story.repairs.map((repair): Row => {
      const { tree, cause, name, parts, helped } = mendedIn(story, repair, failed);
      return {
        ...commonValues(session),
        n: repair.n,
        recorded: repair.stamp.at,
        tree,
        cause,
        cause_name: name,
        parts: parts.join('; '),
        parts_count: parts.length,
        minutes_typed: repair.minutes ?? null,
        took: took.get(repair.n) ?? null,
        planned: story.legs[repair.leg]?.tree.causes[cause]?.repair.minutes ?? null,
        helped: helped ?? null,
        weight: weights.get(repair.n) ?? 0,
      };
    });
  },
};

/** What each repair is of a proven complaint: the last one of a cause has its weight. */
function weightsIn(story: Story, failed: Story['repairs']): ReadonlyMap<number, number> {
  const weights = new Map<number, number>();
  for (const complaint of complaintsOf(story))
    for (const { repair, weight } of provenRepairs(story, complaint, failed))
      weights.set(repair.n, weight);
  return weights;
}
