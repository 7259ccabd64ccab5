import type { Payload } from '../../session/event.ts';
import type { Stamp } from '../../session/kinds/shapes.ts';
import { isPractice } from '../../session/header/is-practice.ts';
import { currentLeg, type Story } from '../../session/story.ts';
import { neededBy } from '../../tree/states.ts';
import { changeMinutes, placeOf } from '../advice/minutes.ts';
import { advanced } from '../../session/clock.ts';

/**
 * Minutes that an act takes as it is planned, the same that the advice counts: practice runs on these,
 * not on the clock of the wall.
 */
export function plannedMinutes(story: Story, said: Payload): number {
  const { tree, shop } = currentLeg(story);
  switch (said.kind) {
    case 'found':
    case 'unsure':
    // One of as many tries as the tree asks for: each is an event of its own.
    case 'proved':
      return tree.checks[said.check]?.minutes ?? 0;
    case 'repaired':
      return tree.causes[said.cause]?.repair.minutes ?? 0;
    case 'access': {
      const access = shop.accesses[said.access];
      return access === undefined ? 0 : said.now === 'open' ? access.open : access.close;
    }
    case 'standing':
      return changeMinutes(placeOf([], story.standing).standing, said.set);
    case 'check-begun': {
      const check = tree.checks[said.check];
      const needed = check && neededBy(tree, check);
      return said.brought === undefined ? 0 : (needed?.minutes ?? 0);
    }
    case 'hinted':
      return said.minutes;
    default:
      return 0;
  }
}

/** Every act of a practice belongs to one opening, so that all of its time is work. */
const run = 'practice';

/** When a practice stands: its own clock, which goes on by what was done alone. */
export function practiceNow(story: Story): Stamp {
  const last = story.entries.at(-1)?.event;
  if (last === undefined) return { at: story.header.opened, run, mono: 0, up: 0 };
  const { at, mono, up } = last;
  return { at, run, mono, up };
}

/** The stamp of an event in a practice, its planned minutes behind the one before; elsewhere the real one. */
export function stampOf(story: Story, said: Payload, now: Stamp): Stamp {
  if (!isPractice(story.header)) return now;
  const minutes = plannedMinutes(story, said);
  const { at, mono, up } = practiceNow(story);
  return {
    at: advanced(at, minutes),
    run,
    mono: mono + Math.round(minutes * 60_000),
    up: up + minutes * 60,
  };
}
