import { askedThing, shownWords } from '../../account/words/wording.ts';
import { isHealthy, type Finding, type Story } from '../../session/story.ts';
import { minutesWritten } from '../../tree/counted/as-written.ts';
import { measuredIn } from '../took.ts';
import { commonColumns, commonValues, type Row, type Table } from './table.ts';

/** What checks showed, corrections applied. */
export const findingsTable: Table = {
  name: 'findings',
  says: 'what a check showed, corrections applied; what was taken back is not there',
  columns: [
    ...commonColumns,
    { name: 'n', kind: 'integer', says: 'number of its event in the session' },
    { name: 'recorded', kind: 'time', says: 'when it was recorded' },
    { name: 'tree', kind: 'text', says: 'id of the tree that the check is of' },
    { name: 'check_id', kind: 'text', says: 'id of the check in its tree' },
    { name: 'check_name', kind: 'text', says: 'the check as a sentence tells it' },
    { name: 'kind', kind: 'text', says: 'look, listen, feel, measure, try or ask' },
    {
      name: 'result',
      kind: 'text',
      says: 'id of the result, or of the healthier of the two it may be',
    },
    { name: 'or_result', kind: 'text', says: 'id of the other; null where it was one' },
    { name: 'label', kind: 'text', says: 'the result in words' },
    { name: 'healthy', kind: 'flag', says: 'it is what a healthy vehicle shows' },
    {
      name: 'reading',
      kind: 'real',
      says: 'the reading that was judged, in `unit`; null without one',
    },
    {
      name: 'unit',
      kind: 'text',
      says: 'the unit as typed: V, inHg, degC ...; null without a reading',
    },
    { name: 'proof', kind: 'flag', says: "it is the complaint's own test after a repair" },
    { name: 'repairs_before', kind: 'integer', says: 'repairs made before it' },
    {
      name: 'took',
      kind: 'real',
      says: 'minutes it took by the record; null where the record cannot measure it',
    },
    { name: 'planned', kind: 'real', says: 'minutes as the tree was written' },
  ],
  rows: (session) => {
    const { story } = session;
    const took = new Map(measuredIn(story).map(({ finding, minutes }) => [finding.n, minutes]));
    return story.findings.map((finding): Row => ({
      ...commonValues(session),
      n: finding.n,
      recorded: finding.stamp.at,
      ...checkOf(story, finding),
      result: finding.result,
      or_result: finding.orResult ?? null,
      label: shownWords(story, finding),
      healthy: isHealthy(story, finding),
      reading: finding.reading?.value ?? null,
      unit: finding.reading?.unit ?? null,
      proof: finding.proof,
      repairs_before: finding.repairs,
      took: took.get(finding.n) ?? null,
      planned: plannedOf(story, finding),
    }));
  },
};

const checkOf = (story: Story, { check, leg }: Finding): Row => ({
  tree: story.legs[leg]?.tree.id ?? null,
  check_id: check,
  check_name: askedThing(story, check, leg),
  kind: story.legs[leg]?.tree.checks[check]?.kind ?? null,
});

function plannedOf({ legs, facts }: Story, { check, leg }: Finding): number | null {
  const tree = legs[leg]?.tree;
  return tree === undefined ? null : minutesWritten(tree, check, facts);
}
