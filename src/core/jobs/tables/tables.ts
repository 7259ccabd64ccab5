import { fold } from '../../session/fold.ts';
import { apartOf, type Read } from '../tally.ts';
import { decisionsTable } from './decisions.ts';
import { findingsTable } from './findings.ts';
import { jobsTable } from './jobs.ts';
import { minutesTable } from './minutes.ts';
import { repairsTable } from './repairs.ts';
import type { Table, TableSession } from './table.ts';

/** All tables of many records, in the order in which they are told. */
export const tables: readonly Table[] = [
  jobsTable,
  findingsTable,
  decisionsTable,
  repairsTable,
  minutesTable,
];

/** A session as the tables read it: what is damaged is there as far as it can be read, marked. */
export const tableSession = (session: string, read: Read): TableSession => ({
  session,
  header: read.header,
  events: read.events,
  story: fold(read.header, read.events),
  apart: apartOf(read),
});
