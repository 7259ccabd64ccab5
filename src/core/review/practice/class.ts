import { beliefHistory, leaderIn } from '../../reason/history/belief-history.ts';
import { checkReveal, type Reveal } from '../../reason/practice/held.ts';
import { fold, type Recorded } from '../../session/fold.ts';
import type { Fingerprint } from '../../session/record/chain.ts';
import { sum } from '../../sum.ts';
import { checkIn, firstLeg, type Story } from '../../session/story.ts';
import { shortWords } from '../../session/finding-words.ts';
import { hiddenNames } from '../../account/clauses/practice.ts';

/** How a member's practice stands, or ended. */
type MemberEnd = 'proven' | 'given up' | 'lost' | 'open' | 'not its vehicle';

/** What one member of a class did with the fault that all of them had. */
export type Member = {
  readonly session: string;
  readonly who: string;
  readonly end: MemberEnd;
  readonly minutes: number;
  readonly checks: number;
  readonly hints: number;
  readonly repairs: number;
  /** Repairs of what was not hidden; undefined as long as nobody has had the fault revealed. */
  readonly needless: number | undefined;
  /** The number of the check after which a hidden cause led the suspects for the first time; undefined if none did. */
  readonly led: number | undefined;
  readonly answers: readonly Answer[];
};

/** A check as it was made: its place among the member's checks, and what it showed. */
type Answer = { readonly check: string; readonly ask: string; readonly shown: string };

/** All who had one and the same fault, known by its commitment. */
export type ClassFault = {
  readonly commitment: string;
  readonly tree: string;
  readonly title: string;
  readonly set: { readonly name: string; readonly number: number } | undefined;
  /** The hidden causes by id and in words, once a record that holds has told them. */
  readonly causes: readonly string[] | undefined;
  readonly hidden: string | undefined;
  readonly members: readonly Member[];
};

export type Practised = { readonly session: string; readonly recorded: Recorded };

type Read = { readonly session: string; readonly story: Story; readonly reveal: Reveal };

/** The practices among these sessions, those of the same fault side by side; jobs are left out. */
export function classOf(
  sessions: readonly Practised[],
  fingerprint: Fingerprint,
): readonly ClassFault[] {
  const groups = new Map<string, Read[]>();
  for (const { session, recorded } of sessions) {
    const reveal = checkReveal(recorded, fingerprint);
    const { practice } = recorded.header;
    if (reveal === undefined || practice === undefined) continue;
    const one = { session, story: fold(recorded.header, recorded.events), reveal };
    groups.set(practice.commitment, [...(groups.get(practice.commitment) ?? []), one]);
  }
  return [...groups].map(([commitment, members]) => faultOf(commitment, members));
}

function faultOf(commitment: string, members: readonly Read[]): ClassFault {
  const held = members.find(({ reveal }) => reveal.kind === 'held');
  const causes = held?.story.revealed?.causes;
  const [one] = members;
  if (one === undefined) throw new RangeError('a fault that nobody had');
  const { tree } = firstLeg(one.story);
  return {
    commitment,
    tree: tree.id,
    title: tree.title,
    set: one.story.header.practice?.set,
    causes,
    hidden: causes && hiddenNames(one.story, causes),
    members: members.map((member) => memberOf(member, causes)),
  };
}

function memberOf({ session, story, reveal }: Read, causes: readonly string[] | undefined): Member {
  const { findings, repairs, hints, header } = story;
  return {
    session,
    who: header.who,
    end: endOf(story, reveal),
    minutes: story.minutes,
    checks: findings.length,
    hints: hints.length,
    repairs: repairs.length,
    needless: causes && sum(repairs.map(({ cause }) => (causes.includes(cause) ? 0 : 1))),
    led: causes && ledAfter(story, causes),
    answers: findings.flatMap((found): Answer[] => {
      const check = checkIn(story, found.check, found.leg);
      return check === undefined
        ? []
        : [{ check: found.check, ask: check.ask, shown: shortWords(check, found) }];
    }),
  };
}

function endOf({ revealed }: Story, { kind }: Reveal): MemberEnd {
  if (kind === 'other fault' || kind === 'other answers') return 'not its vehicle';
  if (revealed === undefined) return 'open';
  return revealed.as === 'given-up' ? 'given up' : revealed.as;
}

/** How many checks had been made when one of these causes led the suspects first. */
function ledAfter(story: Story, causes: readonly string[]): number | undefined {
  let checks = 0;
  for (const { kind, after } of beliefHistory(story)) {
    if (kind === 'finding') checks += 1;
    const leader = after === undefined ? undefined : leaderIn(after);
    if (kind === 'finding' && leader !== undefined && causes.includes(leader)) return checks;
  }
  return undefined;
}
