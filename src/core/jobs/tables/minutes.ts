import { ledgerOf } from '../../account/blocks/ledger.ts';
import { commonColumns, commonValues, type Row, type Table } from './table.ts';

/** Where the time of a job went. */
export const minutesTable: Table = {
  name: 'minutes',
  says: 'a part of the time of a job; all its parts are the time from its first event to its last',
  columns: [
    ...commonColumns,
    {
      name: 'spent_on',
      kind: 'text',
      says: 'checking, opening up, repairing, waiting, lost (repeated, taken back or did not cure), away, gap (the record says nothing)',
    },
    { name: 'minutes', kind: 'real', says: 'minutes; parts of none are left out' },
  ],
  rows: (session) =>
    Object.entries(ledgerOf(session.story)).flatMap(([part, minutes]): Row[] =>
      minutes > 0 ? [{ ...commonValues(session), spent_on: part, minutes }] : [],
    ),
};
