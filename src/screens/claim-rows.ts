import type { Blocker, DueOnScreen, NamedCause } from '../app/walk/question.ts';
import type { At } from '../app/screen.ts';
import { cautionNames, shortCaution } from '../app/walk/caution-words.ts';
import { setUpWords, stateWords } from '../app/wording.ts';
import { seenWords } from '../core/session/safeguard.ts';
import { byDanger } from '../core/session/rules/cautions.ts';
import { triageOfCause } from '../core/session/triage.ts';
import { currentLeg, type Hold, type Leg, type Story } from '../core/session/story.ts';
import { andWords, causeWords } from '../core/telling/words.ts';
import type { BoardLine } from '../app/walk/board.ts';
import { boardRows, detailOf } from './apart/board-lines.ts';
import { cautionPage } from './caution-pages.ts';
import { folded, row, type Row, type Size } from './rows.ts';

/** What is on the screen at once. */
export type Page = readonly Row[];

/** A page that asks for a claim: the fuller of its bodies is shown where there is room for it. */
type Claim = {
  /** Left out where the rows are needed. */
  readonly title?: Row;
  readonly bodies: readonly (readonly Row[])[];
  readonly cautions?: readonly string[];
};

const asks = (text: string): readonly Row[] => [row('', ''), row('>', text, 'marked')];

const shortRows = (leg: Leg, ids: readonly string[]): readonly Row[] =>
  ids.map((id) => row('!', shortCaution(leg, id), 'caution'));
const nameRows = (leg: Leg, ids: readonly string[]): readonly Row[] =>
  ids.length === 0 ? [] : [row('!', cautionNames(leg, ids), 'caution')];
const stepRows = (how: readonly string[]): readonly Row[] =>
  how.map((step, index) => row(`  ${index + 1}.`, step));

const purposes = { check: '', proof: 'PROOF: ', correct: 'ANSWER ANEW: ' } as const;

/** The title of a check: what was bad before the repair, or was not asked yet, is tried after it first. */
export function checkTitle(
  story: Story,
  { purpose, check }: NonNullable<DueOnScreen['asked']>,
): string {
  const after = purpose === 'check' && isAfterRepair(story) ? 'AFTER THE REPAIR: ' : '';
  return `${after}${purposes[purpose]}${check.ask}`;
}

/** Whether the check that is due belongs to what shows a repair, before the complaint's own test. */
export const isAfterRepair = ({ due }: Pick<Story, 'due'>): boolean =>
  due.kind === 'check' && due.why === 'repeat';

/** Nobody said how long a step in own words takes: it has no minutes. */
const withWork = (title: string, work: string, minutes: number): Row =>
  row('', `${title}  (${minutes === 0 ? work : `${work}, ${minutes} min`})`, 'title');

/** Why a check comes first, where the tree makes it a safeguard: what it says of going on without. */
export const firstBecause = ({ tree }: Leg, id: string): readonly string[] =>
  (tree.safeguards ?? [])
    .filter(({ check }) => check === id)
    .map(({ before: { repair, ...standings }, else: otherwise }) =>
      repair === undefined || Object.keys(standings).length > 0
        ? `This comes first. ${otherwise}`
        : `This comes before mending ${andWords(repair.map((cause) => causeWords(tree, cause)))}. ${otherwise}`,
    );

const askOf = (story: Story, { check }: Hold): string =>
  currentLeg(story).tree.checks[check]?.ask ?? check;

/** What each shut safeguard says of going on, whole. */
export const reasonRows = (story: Story, holds: readonly Hold[], titled: boolean): readonly Row[] =>
  holds.map((hold, index) =>
    row(
      '!',
      `${titled && index === 0 ? 'It' : `"${askOf(story, hold)}"`} ${seenWords(hold, 'now')}. ${hold.otherwise}`,
      'caution',
    ),
  );

/** The walk as far as a page of it shows: what is typed, and the cautions read before. */
type OnWalk = Pick<At<'walk'>, 'input' | 'seen'>;

/** The page on the walk that asks for a claim; undefined where nothing is claimed. */
function claimOn(due: DueOnScreen, { input, seen = [] }: OnWalk, size: Size): Claim | undefined {
  if (input.kind !== 'ready') return undefined;
  const { blocker, asked, cause } = due;
  if (blocker.kind === 'safeguard') return safeguardClaim(due, blocker.holds);
  if (blocker.kind === 'before-proof') return refitClaim(blocker.lines, input.cursor, size);
  const title = asked === undefined ? cause && causeTitle(due, cause) : askTitle(due.story, asked);
  if (title === undefined) return undefined;
  if (blocker.kind === 'caution') {
    const { cautions } = blocker;
    return cautionPage({ title, cautions, leg: currentLeg(due.story), seen }, size);
  }
  if (asked !== undefined) return checkClaim(due, asked);
  return cause && causeClaim(due, cause);
}

function safeguardClaim({ story, asked, cause }: DueOnScreen, holds: readonly Hold[]): Claim {
  const [first] = holds;
  const step = asked?.check.ask ?? cause?.cause.name ?? '';
  return {
    title: row('', `FIRST: ${first === undefined ? '' : askOf(story, first)}`, 'title'),
    bodies: [
      [
        ...reasonRows(story, holds, true),
        row('Then:', step),
        ...asks('y: make it now. g: go past it, with a word of your own.'),
      ],
    ],
  };
}

/** What is not back before a proof: each line by its number, of the marked one all that is noted. */
function refitClaim(lines: readonly BoardLine[], cursor: number, { rows }: Size): Claim {
  const marked = lines[cursor];
  return {
    title: row('', 'BEFORE THE PROOF: this was not so when the complaint showed', 'title'),
    bodies: [
      [
        ...boardRows(lines, cursor, rows),
        ...(marked === undefined
          ? asks('A number marks a line, then y: it is back. g: go on so, with a word of your own.')
          : detailOf(marked)),
      ],
    ],
  };
}

const askTitle = (story: Story, asked: NonNullable<DueOnScreen['asked']>): Row =>
  withWork(checkTitle(story, asked), asked.check.kind, asked.check.minutes);

function checkClaim(
  { story, blocker }: DueOnScreen,
  asked: NonNullable<DueOnScreen['asked']>,
): Claim | undefined {
  const leg = currentLeg(story);
  const first = setFirst(blocker, leg);
  if (first === '') return undefined;
  const { how } = asked.check;
  const cautions = byDanger(leg.shop, asked.check.cautions);
  const because = firstBecause(leg, asked.id).map((reason) => row('!', reason, 'caution'));
  // The steps come again once all is set: they give way first.
  return {
    title: askTitle(story, asked),
    bodies: [
      [...because, ...shortRows(leg, cautions), ...stepRows(how), ...asks(first)],
      [...because, ...shortRows(leg, cautions), ...asks(first)],
      [...because, ...nameRows(leg, cautions), ...asks(first)],
    ],
  };
}

/** What is to be set before the step; empty where nothing is. */
function setFirst(blocker: Blocker, { shop }: Leg): string {
  if (blocker.kind === 'prepare') return setUpWords(blocker.preparations, shop);
  return blocker.kind === 'state' ? `First: ${stateWords(blocker.needed)}. y when it is so.` : '';
}

const causeTitle = ({ story }: DueOnScreen, { id, cause: { name, repair } }: NamedCause): Row => {
  const sorts = triageOfCause(currentLeg(story).tree, id) !== undefined;
  return withWork(
    `${story.due.kind === 'repair' ? 'REPAIR: ' : 'IS IT THIS? '}${name}`,
    sorts ? 'to inspection' : 'repair',
    sorts ? 0 : repair.minutes,
  );
};

function causeClaim(due: DueOnScreen, named: NamedCause): Claim {
  const { story, blocker } = due;
  const { where, shows, repair } = named.cause;
  const leg = currentLeg(story);
  const repairing = story.due.kind === 'repair';
  const title = causeTitle(due, named);
  const first = setFirst(blocker, leg);
  const there = where === undefined || where === '' ? [] : [row('Where:', where)];
  const words = repairing ? stepRows(repair.do) : shows === undefined ? [] : [row('Shows:', shows)];
  const ask = asks(first === '' ? claimWords(repairing) : first);
  const cautions = byDanger(leg.shop, repair.cautions);
  const bodies = [
    [...shortRows(leg, cautions), ...there, ...words, ...ask],
    [...nameRows(leg, cautions), ...there, ...words, ...ask],
  ];
  const setOnly = [...shortRows(leg, cautions), ...ask];
  return { title, bodies: first === '' ? bodies : [...bodies, setOnly] };
}

const claimWords = (repairing: boolean): string =>
  repairing
    ? 'y when the repair is done; the proof comes next. x: looked, it was not this.'
    : 'y: this is it. x: looked, not this. o: another check. Esc: put it down.';

/**
 * The pages of what a claim asks, the last with the key that makes it; undefined where nothing is
 * claimed. Nothing of it is cut: what does not fit goes on the next page.
 */
export function claimPages(
  due: DueOnScreen,
  on: OnWalk,
  { rows, columns }: Size,
): readonly Page[] | undefined {
  const claim = claimOn(due, on, { rows, columns });
  if (claim === undefined) return undefined;
  const bodies = claim.bodies.map((body) =>
    [...(claim.title === undefined ? [] : [claim.title]), ...body].flatMap((one) =>
      folded(one, columns),
    ),
  );
  const whole = bodies.find((body) => body.length <= rows);
  return whole === undefined ? paged(bodies.at(-1) ?? [], rows) : [whole];
}

/** The cautions on the page that is read now: their words are among its rows, whole. */
export function cautionsOn(due: DueOnScreen, on: OnWalk, size: Size): readonly string[] {
  return claimOn(due, on, size)?.cautions ?? [];
}

export function paged(all: readonly Row[], rows: number): readonly Page[] {
  const each = Math.max(1, rows - 1);
  const pages = Math.ceil(all.length / each);
  return Array.from({ length: pages }, (_, page) => [
    ...all.slice(page * each, (page + 1) * each),
    ...(page + 1 < pages
      ? [row('>', `space: read on (${page + 1} of ${pages})`, 'marked' as const)]
      : []),
  ]);
}
