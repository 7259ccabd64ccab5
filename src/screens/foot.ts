import type { Kind } from '../app/screen.ts';
import type { OpenSession, State } from '../app/state.ts';
import { apartLine } from '../app/walk/board.ts';
import { currentLeg } from '../core/session/story.ts';
import { isOwn } from '../core/tree/own/bare.ts';
import { sum } from '../core/sum.ts';
import { beforeNow, suspectRows } from '../app/walk/suspect-rows.ts';
import { feedLine, quickerLine } from '../app/walk/why.ts';
import { limitLine } from '../app/walk/limit.ts';
import { openLine } from '../app/walk/contradiction.ts';
import { isAfterRepair } from './claim-rows.ts';
import { failedProofWords, lastWords } from '../app/wording.ts';

const names = ['last', 'proof', 'open', 'limit', 'feed', 'suspects', 'quicker', 'apart'] as const;
type Name = (typeof names)[number];

/** The parts of the foot as they give way in a small window: what a key shows as well goes first. */
const givesWay: readonly Name[] = ['quicker', 'feed', 'suspects', 'last'];

/** Rows by their part: a part stands whole or gives way whole. */
type Parts = Partial<Readonly<Record<Name, readonly string[]>>>;

/** Rows and columns that the screen leaves for its foot. */
export type FootRoom = { readonly rows: number; readonly columns: number };

/** What stands under every step: the last finding, the suspects, a quicker step, what is apart. */
export function footLines(
  state: State,
  session: OpenSession,
  { rows, columns }: FootRoom,
): readonly string[] {
  const { story } = session;
  const proof = failedProofWords(story);
  const apart = apartLine(story);
  // Suspects belong to steps that look for a cause; a repair, a proof and an end have none to show,
  // and without a tree nobody gave odds.
  const asks =
    ['check', 'named', 'stop', 'exhausted'].includes(story.due.kind) &&
    !isAfterRepair(story) &&
    !isOwn(currentLeg(story).tree);
  const around: Parts = {
    last: [`LAST      ${lastWords(story)}`],
    ...part('proof', proof && `PROOF     ${proof}`),
    ...part('open', openLine(story)),
    ...part('limit', limitLine(state, session)),
    ...(asks && { ...part('feed', feedLine(session)), ...part('quicker', quickerLine(session)) }),
    ...part('apart', apart && `APART     ${apart}`),
  };
  const left = { rows: rows - count(around), columns };
  return fitting(asks ? { ...around, ...suspectsPart(state, session, left) } : around, rows);
}

const part = (name: Name, text: string): Parts => (text === '' ? {} : { [name]: [text] });

/** Screens with the step itself on them: what it would part is told there, and nowhere else. */
const withStep: readonly Kind[] = ['walk', 'replay', 'full', 'keys'];

/** Not under the pages that tell of the suspects themselves. */
const suspectsPart = (
  { screen, question: { due } }: State,
  session: OpenSession,
  room: FootRoom,
): Parts =>
  screen.kind === 'why' || screen.kind === 'suspects'
    ? {}
    : {
        suspects: suspectRows(
          session,
          withStep.includes(screen.kind) ? beforeNow(due) : { check: undefined },
          room,
        ),
      };

const count = (parts: Parts): number => sum(Object.values(parts).map((rows) => rows.length));

/** The rows in their order, without the parts that give way. */
function fitting(parts: Parts, most: number): readonly string[] {
  let kept = parts;
  const goes = [...givesWay, ...names.filter((name) => !givesWay.includes(name))];
  for (const name of goes) if (count(kept) > most) kept = { ...kept, [name]: [] };
  return names.flatMap((name) => kept[name] ?? []);
}
