import { plainStep, waySteps, type WayStep } from '../drawing/way-steps.ts';
import type { Story } from '../session/story.ts';
import { outcomeOf, partsOf, type Outcome, type Part } from './opening/part.ts';

/** The way of a job from its first check to how it ended. */
export function wayOf(story: Story): readonly WayStep[] {
  const steps = waySteps(story);
  const n = story.entries.at(-1)?.event.n ?? 0;
  return steps.length === 0
    ? []
    : [...steps, ...endWords(story).map((words) => plainStep(n, 'outcome', words))];
}

/** How each complaint ended, one line a complaint. */
function endWords(story: Story): readonly string[] {
  const parts = partsOf(story);
  return parts.map((part) => {
    const words = partEnd(story, part);
    return parts.length === 1 ? words : `${part.tree.title}: ${words}`;
  });
}

const ends: Readonly<Record<Exclude<Outcome, 'open' | 'tried'>, string>> = {
  proven: 'mended and proven',
  named: 'the cause named, not mended',
  'went away': 'it went away by itself, not explained',
  inspection: 'handed to inspection',
};

const closings = {
  fixed: 'closed as fixed',
  'handed-on': 'handed on',
  'given-up': 'given up',
  'not-reproduced': 'it did not show again',
} as const;

function partEnd(story: Story, part: Part): string {
  const outcome = outcomeOf(story, part);
  const closed = story.closed === undefined ? 'still open' : closings[story.closed.as];
  if (outcome === 'open') return closed;
  if (outcome === 'tried') return `${triedWords(part)}; ${closed}`;
  return outcome === 'named' ? `${ends.named}; ${closed}` : ends[outcome];
}

const triedWords = ({ repairs, failed }: Part): string =>
  repairs.length === failed.length ? 'not mended by what was tried' : 'mended, not proven';
