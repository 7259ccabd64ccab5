import { complaintsOf, mendedFor } from '../../session/complaints.ts';
import { failedRepairs } from '../../account/blocks/ledger.ts';
import type { Apart } from '../job.ts';
import { complaintIn } from '../tally.ts';
import { commonColumns, commonValues, openedOf, type Row, type Table } from './table.ts';

/** A job, a row for each of its complaints. */
export const jobsTable: Table = {
  name: 'jobs',
  says: 'a complaint of a job; a session that cannot be read has one row and no complaint',
  columns: [
    ...commonColumns,
    { name: 'apart', kind: 'text', says: 'why nothing of it counts; null where it counts' },
    { name: 'opened', kind: 'time', says: 'when the job was begun; null where it cannot be read' },
    { name: 'who', kind: 'text', says: 'who worked, as typed; may be empty' },
    { name: 'vehicle', kind: 'text', says: 'the name that the vehicle was given' },
    { name: 'complaint', kind: 'integer', says: 'which of the job, from 1' },
    { name: 'tree', kind: 'text', says: 'id of the tree that it was begun with' },
    { name: 'title', kind: 'text', says: 'the complaint, as its tree has it or in own words' },
    {
      name: 'outcome',
      kind: 'text',
      says: 'proven, open, or closed without proof as fixed, handed-on, given-up, not-reproduced',
    },
    { name: 'causes', kind: 'integer', says: 'causes that were mended for it and proven' },
    { name: 'repairs', kind: 'integer', says: 'repairs made for it' },
    { name: 'failed', kind: 'integer', says: 'those that failed their proof and cured nothing' },
    {
      name: 'minutes',
      kind: 'real',
      says: 'minutes worked on the whole job, on its first complaint; null on the others',
    },
  ],
  rows: (session) => {
    const { story, header } = session;
    const failed = failedRepairs(story);
    return complaintsOf(story).map((one, index): Row => {
      const { tree, title, end, causes } = complaintIn(story, one, failed);
      const mended = mendedFor(story, one);
      return {
        ...commonValues(session),
        apart: session.apart ?? null,
        ...openedOf(header),
        complaint: index + 1,
        tree,
        title,
        outcome: end,
        causes: causes.length,
        repairs: mended.length,
        failed: mended.filter(({ n }) => failed.some((other) => other.n === n)).length,
        minutes: index === 0 ? story.minutes : null,
      };
    });
  },
};

/** The row of a session of which nothing can be read. */
export const unreadableRow = (session: string, apart: Apart): Row => ({
  ...Object.fromEntries(jobsTable.columns.map(({ name }) => [name, null])),
  ...commonValues({ session, apart }),
  apart,
});
