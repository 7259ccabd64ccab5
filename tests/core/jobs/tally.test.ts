import { expect, test } from 'vitest';
import { jobOf } from '../../../src/core/jobs/tally.ts';
import type { Action } from '../../../src/core/session/action.ts';
import type { Damage } from '../../../src/core/session/record/damage.ts';
import { fold } from '../../../src/core/session/fold.ts';
import { newEvent } from '../../../src/core/session/read-event.ts';
import { decide } from '../../../src/core/session/rules/rules.ts';
import { after, stampAt } from '../../helpers/story.ts';

const dark: Action = { do: 'find', check: 'lamp', result: 'dark' };
const mend = (cause: string): Action => ({ do: 'repair', cause, acknowledged: true });
const proof = (result: string): Action => ({ do: 'prove', result });

const read = (actions: readonly Action[], damage: readonly Damage[] = []) => ({
  ...after(actions),
  damage,
});
const complaintOf = (actions: readonly Action[]) => jobOf('job', read(actions)).complaints[0];

test('a complaint whose test passed after a repair was what was repaired', () => {
  const job = jobOf('job', read([dark, mend('fuse'), proof('lit')]));

  expect(job.complaints).toEqual([
    {
      tree: 'no-light',
      trees: ['no-light'],
      title: 'No light',
      end: 'proven',
      causes: [{ cause: 'fuse', name: 'Fuse burnt', tree: 'no-light', weight: 1, share: 60 / 105 }],
    },
  ]);
  expect(job.mended).toEqual([
    { tree: 'no-light', cause: 'fuse', name: 'Fuse burnt', parts: [], helped: true },
  ]);
});

test('a repair that failed its proof was not the cause, and did not help', () => {
  const actions = [dark, mend('fuse'), proof('dark'), mend('wire'), proof('lit')];
  const job = jobOf('job', read(actions));

  expect(job.complaints[0]?.causes.map(({ cause }) => cause)).toEqual(['wire']);
  expect(job.mended.map(({ cause, helped }) => [cause, helped])).toEqual([
    ['fuse', false],
    ['wire', true],
  ]);
});

test('two repairs before one proof share the weight of the job', () => {
  const causes = complaintOf([dark, mend('fuse'), mend('wire'), proof('lit')])?.causes;

  expect(causes?.map(({ cause, weight }) => [cause, weight])).toEqual([
    ['fuse', 0.5],
    ['wire', 0.5],
  ]);
});

test.each([
  ['nothing repaired', [dark], 'open'],
  ['repaired and not tried', [dark, mend('fuse')], 'open'],
  ['the test failed', [dark, mend('fuse'), proof('dark')], 'open'],
  ['handed on', [dark, { do: 'close', as: 'handed-on' }], 'handed-on'],
] as const)('%s: no cause counts', (_, actions, end) => {
  expect(complaintOf([...actions])).toMatchObject({ end, causes: [] });
});

test('a repair that was taken back counts for nothing', () => {
  const actions: Action[] = [dark, mend('fuse'), proof('lit')];
  const { story, events, header } = after(actions);
  const n = events.find(({ kind }) => kind === 'repaired')?.n ?? 0;
  const withdrawn = decide(story, { do: 'correct', n, withdraw: true }, { tree: () => undefined });
  const more =
    withdrawn.kind === 'accepted'
      ? withdrawn.payloads.map((one) =>
          newEvent(events.length + 1, stampAt(events.length + 1), one),
        )
      : [];

  const job = jobOf('job', { header, events: [...events, ...more], damage: [] });

  expect(more).toHaveLength(1);
  expect(fold(header, [...events, ...more]).repairs).toEqual([]);
  expect(job.complaints[0]?.causes).toEqual([]);
});

test.each([
  ['torn', 'torn'],
  ['cut', 'cut short'],
  ['altered', 'altered'],
] as const)('nothing counts of a record that is %s', (kind, apart) => {
  const job = jobOf('job', read([dark, mend('fuse'), proof('lit')], [{ line: 3, kind, bytes: 9 }]));

  expect(job).toMatchObject({ session: 'job', apart, complaints: [], took: [], mended: [] });
});

test('changed ends of lines take nothing away: every line is proven all the same', () => {
  const damage = [{ line: 3, kind: 'line-ends', bytes: 0 }] as const;

  expect(jobOf('job', read([dark, mend('fuse'), proof('lit')], damage)).apart).toBeUndefined();
});

test('nothing counts of practice, nor of what another tool wrote', () => {
  const { header, events } = after([dark, mend('fuse'), proof('lit')]);
  const apart = (change: object) =>
    jobOf('job', { header: { ...header, ...change }, events, damage: [] }).apart;

  expect(apart({ practice: { commitment: 'a'.repeat(64) } })).toBe('practice');
  expect(apart({ tool: 'another 2.0' })).toBe('made by another tool');
});

test('a check took what the record says between it and the event before', () => {
  // An event a minute: the look behind the complaint took one, and the tree says one.
  const { took } = jobOf('job', read([dark, { do: 'find', check: 'look', result: 'whole' }]));

  expect(took).toEqual([
    { tree: 'no-light', check: 'look', name: '"Is the fuse whole?"', planned: 1, minutes: 1 },
  ]);
});
