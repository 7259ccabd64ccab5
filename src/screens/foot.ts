import type { OpenSession } from '../app/state.ts';
import { openThings } from '../core/session/story.ts';
import { feedLine, quickerLine, suspectsLine } from '../app/walk/why.ts';
import { openLine } from '../app/walk/contradiction.ts';
import { isAfterRepair } from './claim-rows.ts';
import { failedProofWords, lastWords } from '../app/wording.ts';

/** The lines of the foot as they give way in a small window: what a key shows as well goes first. */
const givesWay = ['QUICKER', 'ADVISED', 'FIRST', 'SUSPECTS', 'FEED', 'LAST'];

/** What stands under every step: the last finding, the suspects, a quicker step, what is apart. */
export function footLines(session: OpenSession, most: number): readonly string[] {
  const { story } = session;
  // Suspects belong to steps that look for a cause; a repair, a proof and an end have none to show.
  const asks =
    ['check', 'named', 'stop', 'exhausted'].includes(story.due.kind) && !isAfterRepair(story);
  const apart = openThings(story);
  const lines = [
    `LAST      ${lastWords(story)}`,
    failedProofWords(story) === '' ? '' : `PROOF     ${failedProofWords(story)}`,
    openLine(story),
    ...(asks ? [feedLine(session), suspectsLine(session), quickerLine(session)] : []),
    apart.length === 0 ? '' : `APART     ${apart.join('; ')}`,
  ].filter((line) => line !== '');
  const last = lines.toSorted((one, other) => giving(one) - giving(other));
  const kept = new Set(last.slice(Math.max(0, lines.length - most)));
  return lines.filter((line) => kept.has(line));
}

/** How late a line gives way. */
function giving(line: string): number {
  const at = givesWay.findIndex((name) => line.startsWith(`${name} `));
  return at < 0 ? givesWay.length : at;
}
