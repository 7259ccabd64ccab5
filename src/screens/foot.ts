import type { OpenSession } from '../app/state.ts';
import { openThings } from '../core/session/story.ts';
import { feedLine, quickerLine, suspectsLine } from '../app/walk/why.ts';
import { openLine } from '../app/walk/contradiction.ts';
import { isAfterRepair } from './claim-rows.ts';
import { failedProofWords, lastWords } from '../app/wording.ts';

/** What stands under every step: the last finding, the suspects, a quicker step, what is apart. */
export function footLines(session: OpenSession): readonly string[] {
  const { story } = session;
  // Suspects belong to steps that look for a cause; a repair, a proof and an end have none to show.
  const asks =
    ['check', 'named', 'stop', 'exhausted'].includes(story.due.kind) && !isAfterRepair(story);
  const apart = openThings(story);
  return [
    `LAST      ${lastWords(story)}`,
    failedProofWords(story) === '' ? '' : `PROOF     ${failedProofWords(story)}`,
    openLine(story),
    ...(asks ? [feedLine(session), suspectsLine(session), quickerLine(session)] : []),
    apart.length === 0 ? '' : `APART     ${apart.join('; ')}`,
  ].filter((line) => line !== '');
}
