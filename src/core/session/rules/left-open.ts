import { leftComplaints, mendedFor, type Complaint } from '../complaints.ts';
import { contradictions } from '../contradiction.ts';
import { awaitsProof, isProven, lastRepair, triesSoFar } from '../proof.ts';
import { standingWords } from './standing-words.ts';
import { apartNow, leftApart } from '../apart/apart.ts';
import { checkIn, currentLeg, fromLegs, type Story } from '../story.ts';
import { lookAt } from '../../tree/looked.ts';

/**
 * All that a job leaves as it should not stay, one a line: what is open, off, disconnected, metered or running,
 * what is named and not mended, not proven or not settled, what was passed over and what is still to do.
 */
export const leftLines = (story: Story): readonly string[] => [
  ...apartNow(story).map((thing) => sentence(leftApart(story, thing))),
  ...leftStanding(story),
  ...unproven(story),
  ...leftComplaints(story).map((one) => otherLine(story, one)),
  ...contradictions(story).map(
    ({ check, later }) =>
      `Not settled: it got worse, and nobody said why: ${askOf(story, check, later.leg)}`,
  ),
  ...story.skipped.map(({ check, reason }) => `Passed over: ${askOf(story, check)} (${reason})`),
  ...story.followUps.map(({ urgency, text }) =>
    urgency === 'unsafe' ? `Before it is driven: ${text}` : `Still to do: ${text}`,
  ),
];

function leftStanding({ standing: { battery, key, engine } }: Story): readonly string[] {
  return standingWords({
    // The ground lead, where it is off, is among what is apart.
    ...(battery === 'meter-in-series' && { battery }),
    ...(key !== 'off' && { key }),
    ...(engine !== 'off' && { engine }),
  }).map(sentence);
}

const sentence = (clause: string): string =>
  `${clause.charAt(0).toUpperCase()}${clause.slice(1).replace(/[.!?]$/, '')}.`;

/** Another complaint of the job, and how far it came. */
const otherLine = (story: Story, complaint: Complaint): string =>
  mendedFor(story, complaint).length > 0
    ? `Not proven: ${complaint.title}.`
    : `Not mended: ${complaint.title}.`;

/** A repair without its proof, and causes named that nobody mended and no open look denied. */
function unproven(story: Story): readonly string[] {
  const repair = lastRepair(story);
  const proof =
    repair === undefined || isProven(story)
      ? []
      : awaitsProof(story)
        ? [
            `Not proven: ${triesSoFar(story) ?? 'the complaint has not been tried again since the last repair'}.`,
          ]
        : ["Not proven: the complaint's own test still showed it after the last repair."];
  const open = story.condemned.filter(
    ({ n, cause }) =>
      !story.repairs.some((one) => one.n > n && one.cause === cause) &&
      !story.findings.some((one) => one.n > n && one.check === lookAt(cause)),
  );
  const named = [...new Set(open.map(({ cause }) => cause))].map(
    (cause) =>
      `Named and not mended: ${fromLegs(story, ({ tree }) => tree.causes[cause]?.name) ?? cause}.`,
  );
  return [...proof, ...named];
}

const askOf = (story: Story, check: string, leg?: number): string =>
  (leg === undefined ? currentLeg(story).tree.checks[check] : checkIn(story, check, leg))?.ask ??
  check;
