import { expect, test } from 'vitest';
import { classBlocks, classCsv } from '../../../../src/core/review/practice/class-blocks.ts';
import { classOf } from '../../../../src/core/review/practice/class.ts';
import { showMarkdown } from '../../../../src/core/account/forms/markdown.ts';
import type { Recorded } from '../../../../src/core/session/fold.ts';
import { sha256 } from '../../../../src/store/recover.ts';
import { shippedTree } from '../../../helpers/library.ts';
import { practiceOn } from '../../../helpers/practice/begun.ts';
import { play, type Policy } from '../../../helpers/practice/play.ts';

const tree = shippedTree('slow-crank');
const policies: readonly Policy[] = ['own way', 'advice', 'odds'];
const begun = practiceOn(tree, { seed: 'a class', causes: ['pos-cable'] });
const played = policies.map((policy) => ({ policy, ...play(begun, policy) }));

const by = (who: string, { header, events }: Recorded): Recorded => ({
  header: { ...header, who },
  events,
});
const sessions = played.map(({ policy, recorded }) => ({
  session: `session of ${policy}`,
  recorded: by(policy, recorded),
}));

test('those who had the same fault stand side by side, with what each of them did', () => {
  const other = practiceOn(tree, { seed: 'another one' });
  const faults = classOf(
    [...sessions, { session: 'x', recorded: { header: other.header, events: [] } }],
    sha256,
  );
  const [same, apart] = faults;

  expect(faults).toHaveLength(2);
  expect(same?.causes).toEqual(['pos-cable']);
  expect(same?.members.map(({ end }) => end)).toEqual(
    // Whom the advice leaves with nothing listed has come to no end yet.
    played.map(({ outcome }) => (outcome === 'proven' ? 'proven' : 'open')),
  );
  expect(
    same?.members.map(({ minutes, checks, repairs, needless }) => [
      minutes,
      checks,
      repairs,
      needless,
    ]),
  ).toEqual(
    played.map(({ minutes, checks, repairs, needless }) => [minutes, checks, repairs, needless]),
  );
  // Nobody has come to its end: what is hidden stays untold.
  expect(apart).toMatchObject({ causes: undefined, hidden: undefined });
  expect(apart?.members[0]).toMatchObject({ end: 'open', needless: undefined, led: undefined });
});

test('the right cause leads after no more checks than were made, and on the way of looking it does lead', () => {
  const members = classOf(sessions, sha256)[0]?.members ?? [];
  const [own, , odds] = members;

  expect(own?.led).toBeGreaterThan(0);
  for (const { led = 0, checks } of members) expect(led).toBeLessThanOrEqual(checks);
  expect(odds?.needless).toBeGreaterThan(own?.needless ?? 0);
});

test('answers that are not those of the vehicle are told, and tell nothing of the fault', () => {
  const [first] = sessions;
  if (first === undefined) throw new Error('nobody played');
  const { header, events } = first.recorded;
  const forged: Recorded = {
    header,
    events: events.map((event) =>
      event.kind === 'revealed' ? { ...event, causes: ['neg-cable'] } : event,
    ),
  };
  const [fault] = classOf([{ session: 'forged', recorded: forged }], sha256);

  expect(fault?.members[0]?.end).toBe('not its vehicle');
  expect(fault?.hidden).toBeUndefined();
});

test('the table has a row a member, and the order in which each looked a row a check', () => {
  const text = showMarkdown(classBlocks(classOf(sessions, sha256)));

  expect(text).toContain('| own way | proven |');
  expect(text).toContain('Hidden: ');
  expect(text.match(/^\| .* \| 1\\?\. /gm)).not.toBeNull();
});

test('as values separated by commas no name is taken for a formula', () => {
  const [first] = sessions;
  const named = [{ session: 's', recorded: by('=2+2, "x"', first!.recorded) }];
  const lines = classCsv(classOf(named, sha256)).trimEnd().split('\r\n');

  expect(lines).toHaveLength(2);
  expect(lines[1]).toContain(`"'=2+2, ""x"""`);
});
