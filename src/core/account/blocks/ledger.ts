import type { Entry } from '../../session/correct.ts';
import { traits, type Work } from '../../session/traits.ts';
import type { Story } from '../../session/story.ts';
import { curedBy } from '../../reason/history/cured.ts';
import { stretchBetween } from '../../session/time.ts';
import { sum } from '../../sum.ts';
import { heading, paragraph, type Block } from '../block.ts';
import { joined, minuteWords, sentence } from '../words/wording.ts';

/**
 * Minutes by what they were spent on, work or not: together they are all the time from the first event
 * of the job to the last, through sleep, clocks that are set, changes of zone, kills and resumes.
 */
export type Ledger = Readonly<Record<Work | 'lost' | 'away' | 'gap', number>>;

/**
 * Where the minutes went, by what each stretch of time ended in. Waiting is what passes once a timer was
 * set until something else is recorded, as long as it runs. Lost is what had to be done over: answers
 * taken back, checks repeated with nothing changed between, repairs that did not cure.
 */
export function ledgerOf(story: Story): Ledger {
  const wasted = wastedEvents(story);
  const minutes = {
    checking: 0,
    'opening up': 0,
    repairing: 0,
    waiting: 0,
    lost: 0,
    away: 0,
    gap: 0,
  };
  const { steps, begun } = spentOn(story);
  for (const { entry, worked, waited, away, gap } of steps) {
    minutes.away += away;
    minutes.gap += gap;
    minutes.waiting += waited;
    minutes[accountFor(entry, wasted)] += worked;
  }
  minutes.checking += begun;
  return minutes;
}

/** What an event took, in minutes, from the one before it: nothing where the time belongs to the next. */
export type Spent = {
  readonly entry: Entry;
  readonly worked: number;
  readonly waited: number;
  readonly away: number;
  readonly gap: number;
  /** Something was opened or set up for it in the same go: the time holds that too. */
  readonly withOpening: boolean;
};

/** The minutes of every event but the first, and those of a step that was begun with nothing after it. */
export function spentOn(story: Pick<Story, 'entries'>): {
  readonly steps: readonly Spent[];
  readonly begun: number;
} {
  const steps: Spent[] = [];
  let carried = 0;
  let withOpening = false;
  for (const [index, entry] of story.entries.entries()) {
    const before = story.entries[index - 1];
    // What was only implied, or begun, came with the step after it: the time belongs there.
    const goesOn = isPartOfNext(entry);
    if (before !== undefined) {
      const { worked, away, gap } = stretchBetween(before.event, entry.event);
      const waited = Math.min(worked / 60, before.said?.kind === 'timer' ? before.said.minutes : 0);
      const spent = carried + worked / 60 - waited;
      const times = { waited, away: away / 60, gap: gap / 60, withOpening };
      steps.push({ entry, worked: goesOn ? 0 : spent, ...times });
      carried = goesOn ? spent : 0;
    }
    withOpening = goesOn && (withOpening || entry.said?.kind !== 'check-begun');
  }
  return { steps, begun: carried };
}

/** What belongs to the step that comes after it: said for it, or only implied by it. */
export const isPartOfNext = ({ said }: Entry): boolean =>
  said?.kind === 'check-begun' ||
  said?.kind === 'expected' ||
  ((said?.kind === 'standing' || said?.kind === 'access') && said.implied === true);

function accountFor({ event, said }: Entry, wasted: ReadonlySet<number>): Work | 'lost' {
  if (wasted.has(event.n)) return 'lost';
  if (said?.kind === 'standing' && said.set.heat !== undefined) return 'waiting';
  return event.kind === 'unknown' ? 'checking' : traits[event.kind].work;
}

/** Events whose time bought nothing. */
function wastedEvents(story: Story): ReadonlySet<number> {
  const wasted = new Set<number>();
  for (const { event, said, correctedBy } of story.entries)
    if (said === undefined && correctedBy.length > 0) wasted.add(event.n);
  for (const { n } of repeatsOf(story)) wasted.add(n);
  for (const { n } of failedRepairs(story)) wasted.add(n);
  return wasted;
}

/** Findings of a check that had been found before, with no repair since and the same result. */
export function repeatsOf(story: Story): Story['findings'] {
  const last = new Map<string, string>();
  return story.findings.filter(({ check, repairs, result, orResult = '', proof }) => {
    const key = `${check} ${repairs}`;
    const shown = `${result} ${orResult}`;
    const same = last.get(key) === shown;
    last.set(key, shown);
    return same && !proof;
  });
}

/** Repairs that cured nothing: the complaint's own test still failed after them, and no reading of theirs came right. */
export function failedRepairs(story: Story): Story['repairs'] {
  return story.repairs.filter((repair, index) => {
    const next = story.repairs[index + 1];
    const proof = story.proofs.find(({ n }) => n > repair.n && n < (next?.n ?? Infinity));
    return proof?.good === false && curedBy(story, repair).length === 0;
  });
}

/** What each part of the ledger is called, in the order in which it is told. */
const names: Readonly<Record<keyof Ledger, string>> = {
  checking: 'checking',
  'opening up': 'opening up',
  repairing: 'repairing',
  waiting: 'waiting',
  lost: 'lost',
  away: 'away from it',
  gap: 'of which the record says nothing',
};

const parts = ['checking', 'opening up', 'repairing', 'waiting', 'lost', 'away', 'gap'] as const;

/** The parts of a ledger that come to half a minute, each in words and minutes. */
const told = (ledger: Ledger) =>
  parts.flatMap((part) =>
    ledger[part] < 0.5 ? [] : [{ part, name: names[part], minutes: ledger[part] }],
  );

/** The ledger in one line: `12 minutes checking, 5 minutes repairing; 8 h 2 min away from it`. */
export const ledgerWords = (story: Story): string =>
  told(ledgerOf(story))
    .map(({ name, minutes }) => `${minuteWords(minutes)} ${name}`)
    .join(', ');

/** The ledger as a table; nothing for a session without a measured minute of work. */
export function ledgerBlocks(story: Story): readonly Block[] {
  const ledger = ledgerOf(story);
  const work = told(ledger).filter(({ part }) => part !== 'away' && part !== 'gap');
  const { away, gap, ...worked } = ledger;
  const all = sum(Object.values(worked));
  if (work.length === 0) return [];
  return [
    heading('Where the time went'),
    {
      kind: 'table',
      head: ['Spent on', 'Minutes', 'Share'],
      rows: [
        ...work.map(({ name, minutes }) => [
          name,
          String(Math.round(minutes)),
          `${Math.round((100 * minutes) / all)} %`,
        ]),
        ['all told', String(Math.round(all)), ''],
      ],
    },
    ...notesOf(ledger).map(paragraph),
  ];
}

/** What the table does not say, as one paragraph; none where it says all. */
function notesOf(ledger: Ledger): readonly string[] {
  const said = `${ledgerNote(ledger)}${besidesNote(ledger)}`.trim();
  return said === '' ? [] : [said];
}

/** What was lost, where something was. */
const ledgerNote = ({ lost }: Ledger): string =>
  lost < 0.5
    ? ''
    : sentence(`${minuteWords(lost)} went on what was repeated, taken back, or did not cure`);

/** Time that was no work, where there was some; with the work it is all from first to last. */
function besidesNote(ledger: Ledger): string {
  const beside = told(ledger).filter(({ part }) => part === 'away' || part === 'gap');
  if (beside.length === 0) return '';
  const words = beside.map(({ name, minutes }) => `${minuteWords(minutes)} ${name}`);
  const all = minuteWords(sum(Object.values(ledger)));
  return ` ${sentence(`Beside that there were ${joined(words)}: from first to last ${all}`)}`;
}
