import { bad, firstOf, good, never } from '../core/problem.ts';
import { checkReveal, type Reveal } from '../core/reason/practice/held.ts';
import { fold } from '../core/session/fold.ts';
import { stateOf, type Damage, type RecordState } from '../core/session/record/damage.ts';
import { cleanRow } from '../core/text.ts';
import { findPhoto } from '../store/photos.ts';
import { sha256, type Recovered } from '../store/recover.ts';
import { loadSession } from '../store/sessions.ts';
import { printJson, type Ended, type Io } from './io.ts';
import { readOptions } from './options.ts';
import { namedSessions } from './session.ts';
import { callOf, uses } from './uses.ts';

const use = callOf('verify');

/**
 * `droplight verify SESSION...`: what has become of each record, and at which lines. With a link
 * that was told to somebody else, whether the record still holds everything it held then. 1 when
 * any is not as it was.
 */
export async function verify(io: Io, args: readonly string[]): Promise<Ended> {
  const given = readOptions(args, uses.verify.options);
  if (given.kind === 'bad') return given;
  const against = given.value.text('against')?.trim().toLowerCase();
  if (against !== undefined && !/^[0-9a-f]{64}$/.test(against)) return bad(noLink);
  const paths = namedSessions(io, given.value, use);
  if (paths.kind === 'bad') return paths;
  const verdicts = paths.value.map((path) => judge(io, path, against));
  if (given.value.flag('json')) printJson(io, verdicts);
  else for (const verdict of verdicts) io.out(`${cleanRow(wordsOf(verdict))}\n`);
  return good(verdicts.every(isWhole) ? 0 : 1);
}

const noLink = {
  code: 'no-link',
  message: 'A link is 64 digits and letters a to f.',
  mend: 'Copy the closing link from the last line of the account, or from "droplight verify".',
};

/** A photo of the record that is not there any more, or is another one; `n` is the number of its event. */
type LostPhoto = {
  readonly n: number;
  readonly file: string;
  readonly state: 'missing' | 'changed';
};

type Verdict = {
  readonly session: string;
  readonly state: RecordState | 'newer' | 'unreadable';
  readonly events: number;
  readonly lines: readonly Damage[];
  readonly link?: string;
  /** Photos that are missing or changed. */
  readonly photos?: readonly LostPhoto[];
  /** The line that the link told elsewhere ends: all up to it is as it was; absent when that is not shown. */
  readonly provenTo?: number;
  readonly why?: string;
  /** What a practice has told of its fault, held against what it was committed to. */
  readonly practice?: Reveal;
};

const isWhole = ({ state, photos = [], practice }: Verdict): boolean =>
  state === 'whole' && photos.length === 0 && !isForged(practice);

/** Whether a practice tells another fault or other answers than those of its vehicle. */
const isForged = (practice: Reveal | undefined): boolean =>
  practice?.kind === 'other fault' || practice?.kind === 'other answers';

/** Photos that the record tells of, as far as they are not beside it as they were kept. */
const lostPhotos = (io: Io, path: string, { header, events }: Recovered): readonly LostPhoto[] =>
  fold(header, events).photos.flatMap(({ n, file, sha256 }): LostPhoto[] => {
    const { kind } = findPhoto(io.disk.files, path, { file, sha256 });
    return kind === 'there' ? [] : [{ n, file, state: kind }];
  });

function judge(io: Io, path: string, against: string | undefined): Verdict {
  const loaded = loadSession(io.disk.files, path);
  if (loaded.kind === 'bad') {
    const { code, message } = firstOf(loaded.problems);
    const altered = code === 'altered-header';
    const state = code === 'newer-session' ? 'newer' : altered ? 'altered' : 'unreadable';
    const lines: Damage[] = altered ? [{ line: 1, kind: 'altered', bytes: 0 }] : [];
    return { session: path, state, events: 0, lines, why: message };
  }
  const { events, damage, openEnd, link, links } = loaded.value;
  const state = stateOf(damage, openEnd);
  const photos = lostPhotos(io, path, loaded.value);
  const practice = checkReveal(loaded.value, sha256);
  const verdict = {
    session: path,
    state,
    events: events.length,
    lines: damage,
    link,
    ...(photos.length > 0 && { photos }),
    ...(practice !== undefined && { practice }),
  };
  if (against === undefined) return verdict;
  const held = links.find((one) => one.link === against)?.line;
  const harmed = damage.some(
    ({ line, kind }) =>
      held !== undefined && line <= held && kind !== 'torn' && kind !== 'line-ends',
  );
  if (held !== undefined) return harmed ? verdict : { ...verdict, provenTo: held };
  // Whole as far as it goes, and what stood there when the link was told is not in it.
  return {
    ...verdict,
    state: state === 'altered' ? state : 'cut short',
    why: `${events.length} events, none of them ends in that link: lines are missing at the end, or it is the link of another record`,
  };
}

function wordsOf({
  session,
  state,
  events,
  lines,
  link,
  provenTo,
  why,
  photos = [],
  practice,
}: Verdict): string {
  const at = lines.map(({ line, kind }) => `line ${line} ${told[kind]}`).join(', ');
  const proven = provenTo === undefined ? '' : `that link ends line ${provenTo}`;
  const lost = photos.map(({ n, file, state: now }) => `photo ${file} of event ${n} ${now}`);
  const practised = practice === undefined ? [] : [revealWords(practice)];
  const whole = [`${events} events`, at, ...lost, ...practised, proven, `last link ${link ?? ''}`];
  const parts = why === undefined ? whole : [why, ...lost, ...practised];
  const word = lost.length === 0 ? state : `${state}, but not its photos`;
  return `${word}: ${session} (${parts.filter((part) => part !== '').join(', ')})`;
}

/** How far what a practice revealed is what it had been committed to. */
function revealWords(practice: Reveal): string {
  switch (practice.kind) {
    case 'hidden':
      return 'practice: the fault is still hidden';
    case 'lost':
      return 'practice: the fault was lost, so nothing can be held against the commitment';
    case 'held':
      return "practice: the fault is the one committed to, and every answer is its vehicle's";
    case 'other fault':
      return 'practice: THE FAULT REVEALED IS NOT THE ONE COMMITTED TO';
    case 'other answers':
      return `practice: NOT THE ANSWERS OF ITS VEHICLE at event ${practice.events.join(', ')}`;
    default:
      return never(practice);
  }
}

const told: Readonly<Record<Damage['kind'], string>> = {
  torn: 'torn',
  altered: 'altered',
  cut: 'behind missing lines',
  'line-ends': 'with another line end',
};
