import { fold } from '../core/session/fold.ts';
import { complaintsOf, isProvenGone } from '../core/session/complaints.ts';
import { openQuestions } from '../core/session/contradiction.ts';
import { readPart, saysNone } from '../core/session/costs/parts.ts';
import { costsOf } from '../core/session/costs/costs.ts';
import { currentLeg, type Story } from '../core/session/story.ts';
import { clockOddities, stretchOver } from '../core/session/time.ts';
import { showMoney } from '../core/trade/money/money.ts';
import { recordJson } from './session.ts';
import type { Recovered } from '../store/recover.ts';
import { done, printJson, type Ended, type Io } from './io.ts';
import { withSession } from './session.ts';
import { uses } from './uses.ts';

/** `droplight story SESSION --json`: the folded state of a session. Never opens it for writing. */
export async function story(io: Io, args: readonly string[]): Promise<Ended> {
  return withSession(io, args, uses.story, ({ recovered }) => {
    printJson(io, storyJson(recovered));
    return done;
  });
}

/** What was spent, each amount exact as text: `12.40 EUR`. `null` is not noted, or not to be read. */
function costsJson(story: Story) {
  const { lines, parts, repairs, spent, ...rest } = costsOf(story);
  return {
    lines: lines.map(({ each, sum, cause, ...line }) => ({
      ...line,
      each: each ?? null,
      sum: sum === undefined ? null : showMoney(sum),
      cause: cause ?? null,
    })),
    parts: parts.map(showMoney),
    repairs: repairs.map(showMoney),
    spent: spent.map(showMoney),
    ...rest,
  };
}

/** The story as data: everything but the trees, which stand in the session's own file. `null` is not noted. */
export function storyJson({ header, events, damage, link }: Recovered) {
  const folded = fold(header, events);
  const { header: _, entries, legs, due, ...rest } = folded;
  return {
    record: recordJson(damage),
    session: header.id,
    opened: header.opened,
    who: header.who,
    vehicle: header.vehicle,
    tree: currentLeg(folded).tree.id,
    legs: legs.map(({ tree, since, complaint }) => ({
      tree: tree.id,
      since,
      ...(complaint !== undefined && { complaint }),
    })),
    complaints: complaintsOf(folded).map((one) => ({
      title: one.title,
      said: one.said ?? null,
      legs: one.legs,
      proven: isProvenGone(folded, one),
    })),
    events: entries.length,
    ...rest,
    condemned: rest.condemned.map((one) => ({ ...one, found: one.found ?? null })),
    repairs: rest.repairs.map(({ did, parts, minutes, cost, ...one }) => ({
      ...one,
      did: did ?? null,
      parts: parts.length === 0 ? null : saysNone(parts) ? [] : parts.map(readPart),
      minutes: minutes ?? null,
      cost: cost ?? null,
    })),
    costs: costsJson(folded),
    openQuestions: openQuestions(folded),
    step: due,
    clock: clockOddities(entries.map(({ event }) => event)),
    /** Seconds by what they were; together they are the span from the first event to the last. */
    time: stretchOver(entries.map(({ event }) => event)),
    damage,
    link,
  };
}
