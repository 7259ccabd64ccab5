import { secondsBetween } from '../../session/clock.ts';
import { isHealthy, type Story } from '../../session/story.ts';
import { isOwn } from '../../tree/own/bare.ts';
import { isLong, noteBelongs } from '../story/gather.ts';
import {
  asClause,
  causeIn,
  causeName,
  causeThing,
  toldFound,
  askedThing,
  readingWords,
  quoted,
} from '../words/wording.ts';

/**
 * A cause as it was found: in the person's own words on naming it, or noted beside that; else as the
 * finding showed it that looked at the part. `the vacuum hose ("hose split at the clamp")`.
 */
export function asFound(story: Story, cause: string): string {
  const place = placeOf(story, cause);
  const thing = place.leg < 0 ? causeThing(story, cause) : causeIn(story, cause, place.leg);
  const own = place.found ?? noteBeside(story, place.at);
  if (own !== undefined && asClause(own) !== thing) return `${thing} ("${quoted(own)}")`;
  const shown = lookedAt(story, cause, place) ?? ownName(story, cause, place);
  return shown === undefined || shown === thing ? thing : `${thing} (${shown})`;
}

/** Where a cause was named, or mended without that, and what was said of it then. */
type Place = {
  readonly n: number;
  readonly leg: number;
  readonly at: string | undefined;
  readonly found: string | undefined;
};

function placeOf(story: Story, cause: string): Place {
  const named = story.condemned.findLast((one) => one.cause === cause);
  const repair = story.repairs.findLast((one) => one.cause === cause);
  const n = named?.n ?? repair?.n ?? Infinity;
  const leg = repair?.leg ?? story.legs.findLastIndex(({ since }) => since < n);
  return { n, leg, at: named?.stamp.at, found: named?.found };
}

/** The full name of a cause that a person named. */
function ownName(story: Story, cause: string, { leg }: Place): string | undefined {
  const tree = story.legs[leg]?.tree;
  return tree !== undefined && isOwn(tree) ? asClause(causeName(story, cause)) : undefined;
}

function noteBeside({ entries }: Story, at: string | undefined): string | undefined {
  if (at === undefined) return undefined;
  const notes = entries.flatMap(({ event, said }) => {
    const since = secondsBetween(event.at, at);
    const near = since !== undefined && Math.abs(since) <= noteBelongs;
    return said?.kind === 'noted' && said.on === undefined && near && !isLong(said.text)
      ? [said.text]
      : [];
  });
  return notes.at(-1);
}

/** What the last check before it showed that was not healthy and speaks for this cause above others. */
function lookedAt(story: Story, cause: string, { n, leg }: Place): string | undefined {
  const last = story.findings.findLast(
    (finding) =>
      finding.n < n &&
      finding.leg === leg &&
      !isHealthy(story, finding) &&
      Object.hasOwn(story.legs[leg]?.tree.checks[finding.check]?.points ?? {}, cause),
  );
  // The complaint's own test shows every cause.
  if (last === undefined || last.check === story.legs[leg]?.tree.complaint.confirm)
    return undefined;
  const told = toldFound(story, last);
  const reading = readingWords(story, last);
  // A bare reading says nothing without its check.
  return reading === '' ? told : `${askedThing(story, last.check, last.leg)}: ${reading}`;
}
