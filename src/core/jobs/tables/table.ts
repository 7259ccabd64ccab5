import type { Header } from '../../session/header/header.ts';
import type { Recorded } from '../../session/fold.ts';
import type { Story } from '../../session/story.ts';
import type { Apart } from '../job.ts';

/** What a column holds; a `time` is text as the record has it: ISO 8601 with the offset of its place. */
export type ColumnKind = 'text' | 'time' | 'integer' | 'real' | 'flag';

export type Column = {
  readonly name: string;
  readonly kind: ColumnKind;
  /** What it says, with its unit; where it is null. */
  readonly says: string;
};

type Value = string | number | boolean | null;
export type Row = Readonly<Record<string, Value>>;

/** A session as a table reads it. */
export type TableSession = Recorded & {
  readonly session: string;
  readonly story: Story;
  readonly apart: Apart | undefined;
};

export type Table = {
  readonly name: string;
  /** What one row is. */
  readonly says: string;
  readonly columns: readonly Column[];
  readonly rows: (session: TableSession) => readonly Row[];
};

/** Columns that stand first in every table, so that none has to be joined to leave out what counts for nothing. */
export const commonColumns: readonly Column[] = [
  { name: 'session', kind: 'text', says: 'name of the session file, without its ending' },
  {
    name: 'counts',
    kind: 'flag',
    says: 'false for practice and for a record that is torn, cut short, altered, newer or not ours',
  },
];

export const commonValues = ({ session, apart }: Pick<TableSession, 'session' | 'apart'>): Row => ({
  session,
  counts: apart === undefined,
});

export const openedOf = ({ opened, who, vehicle }: Header): Row => ({
  opened,
  who,
  vehicle: vehicle.name,
});
