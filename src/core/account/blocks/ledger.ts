import type { Entry } from '../../session/correct.ts';
import { traits, type Work } from '../../session/traits.ts';
import type { Story } from '../../session/story.ts';
import { curedBy } from '../../reason/history/cured.ts';
import { stretchOver, workedSeconds } from '../../session/time.ts';
import { heading, paragraph, type Block } from '../block.ts';
import { joined, minuteWords, sentence } from '../words/wording.ts';

/** Minutes by what they were spent on. */
export type Ledger = Readonly<Record<Work | 'lost', number>>;

/**
 * Where the minutes went, by what each stretch of time ended in. Lost is what had to be done over:
 * answers taken back, checks repeated with nothing changed between, repairs that did not cure.
 */
export function ledgerOf(story: Story): Ledger {
  const wasted = wastedEvents(story);
  const minutes = { checking: 0, 'opening up': 0, repairing: 0, waiting: 0, lost: 0 };
  let [timer, carried] = [0, 0];
  story.entries.forEach((entry, index) => {
    const before = story.entries[index - 1];
    if (before === undefined) return;
    const spent = carried + workedSeconds(before.event, entry.event) / 60;
    // What was only implied, or begun, came with the step after it: the time belongs there.
    carried = isPartOfNext(entry) ? spent : 0;
    if (carried > 0) return;
    const waited = Math.min(spent, timer);
    timer = entry.said?.kind === 'timer' ? entry.said.minutes : timer - waited;
    minutes.waiting += waited;
    minutes[accountFor(entry, wasted)] += spent - waited;
  });
  return minutes;
}

/** What belongs to the step that comes after it: said for it, or only implied by it. */
export const isPartOfNext = ({ said }: Entry): boolean =>
  said?.kind === 'check-begun' ||
  ((said?.kind === 'standing' || said?.kind === 'access') && said.implied === true);

function accountFor({ event, said }: Entry, wasted: ReadonlySet<number>): keyof Ledger {
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

/** The ledger as a table; nothing for a session without a measured minute. */
export function ledgerBlocks(story: Story): readonly Block[] {
  const ledger = ledgerOf(story);
  const entries = Object.entries(ledger).filter(([, minutes]) => minutes >= 0.5);
  const all = Object.values(ledger).reduce((sum, minutes) => sum + minutes, 0);
  if (entries.length === 0) return [];
  return [
    heading('Where the time went'),
    {
      kind: 'table',
      head: ['Spent on', 'Minutes', 'Share'],
      rows: [
        ...entries.map(([name, minutes]) => [
          name,
          String(Math.round(minutes)),
          `${Math.round((100 * minutes) / all)} %`,
        ]),
        ['all told', String(Math.round(all)), ''],
      ],
    },
    paragraph(`${ledgerNote(ledger)}${besidesNote(story)}`),
  ];
}

function ledgerNote({ lost }: Ledger): string {
  const nothing =
    lost < 0.5
      ? 'Nothing had to be done over.'
      : sentence(`${minuteWords(lost)} went on what was repeated, taken back, or did not cure`);
  return `${nothing} Opening up that was not written down by itself is counted with the step it was done for.`;
}

/** Time that was no work, where there was some. */
function besidesNote({ entries }: Story): string {
  const { away, gap } = stretchOver(entries.map(({ event }) => event));
  const told = [
    ...(away < 30 ? [] : [`${minuteWords(away / 60)} away from it`]),
    ...(gap < 30 ? [] : [`${minuteWords(gap / 60)} of which the record says nothing`]),
  ];
  return told.length === 0 ? '' : ` ${sentence(`Beside that there were ${joined(told)}`)}`;
}
