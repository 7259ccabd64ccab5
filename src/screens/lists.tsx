import { ListHead } from './forms/list-head.tsx';
import { otherChecks, suspects, type OtherCheck, type SuspectLine } from '../app/walk/lists.ts';
import type { OpenSession } from '../app/state.ts';
import { gradeOf } from '../core/reason/grade.ts';
import { aboutMinutes, savesWords } from '../core/reason/history/wording.ts';
import { expectLines } from '../app/walk/expect.ts';
import { contradictionFacts, contradictionLines } from '../app/walk/contradiction.ts';
import type { At } from '../app/screen.ts';
import { holdsBefore } from '../core/session/safeguard.ts';
import { currentLeg, lastFinding, type Guarded, type Story } from '../core/session/story.ts';
import { isOwn } from '../core/tree/own/bare.ts';
import { Choices, type Choice } from './parts.tsx';
import { allRowsOf, type Needs } from './room.ts';
import { findingWords } from '../app/wording.ts';

export type ListScreen = At<'others' | 'suspects' | 'contradiction' | 'expect'>;
type ListsProps = {
  readonly session: OpenSession;
  readonly screen: ListScreen;
  readonly rows: number;
  readonly columns: number;
};

const titles = {
  others: 'OTHER CHECKS: pick the one to do now',
  suspects: 'REPAIR: pick the cause you condemn',
  expect: 'WHAT DO YOU EXPECT? Its number; esc: not said.',
  contradiction: 'THIS CONTRADICTS WHAT WAS FOUND BEFORE. Which is it?',
} as const;

/** The lists that stand over the walk. */
export function ListBody({ session, screen, rows, columns }: ListsProps) {
  const choices = linesOf(session, screen);
  const facts = screen.kind === 'contradiction' ? contradictionFacts(session.story) : [];
  return (
    <>
      <ListHead title={titles[screen.kind]} facts={facts} />
      <Choices
        choices={choices}
        cursor={screen.cursor}
        rows={rows - 1 - allRowsOf(facts, columns - 2)}
      />
    </>
  );
}

/** Rows that the page of a contradiction asks for: both findings whole, and its lines. */
export function contradictionNeeds(story: Story, columns: number): Needs {
  const facts = allRowsOf(contradictionFacts(story), columns - 2);
  return { least: 2 + facts, wanted: 1 + facts + contradictionLines(story).length };
}

function linesOf(session: OpenSession, screen: ListScreen): readonly Choice[] {
  switch (screen.kind) {
    case 'expect':
      return expectLines(session.story, screen.check).map(({ id, label }) => ({ id, label }));
    case 'others':
      return otherChecks(session).map((line) => otherLine(session.story, line));
    case 'suspects':
      return suspects(session).map((line) => suspectLine(session.story, line));
    case 'contradiction':
      return contradictionLines(session.story).map(({ as, label }) => ({ id: as, label }));
  }
}

function otherLine(story: Story, { id, minutes, versusTree }: OtherCheck): Choice {
  const saves = savesWords(versusTree);
  const ask = currentLeg(story).tree.checks[id]?.ask ?? id;
  const held = heldWords(story, { kind: 'check', check: id });
  const passed = passedWords(story, id);
  return {
    id,
    label: `${minutesBefore(story, aboutMinutes(minutes).padStart(6))}${marked(saves, held)}${ask}${passed === '' ? '' : `  [${passed}]`}`,
  };
}

/** What a line takes, before its name; of a job without a tree nobody said it. */
const minutesBefore = (story: Story, minutes: string): string =>
  isOwn(currentLeg(story).tree) ? '' : `${minutes}  `;

/** That a safeguard comes first, where one is shut. */
const heldWords = (story: Story, step: Guarded): string =>
  holdsBefore(story, step).length > 0 ? 'a safeguard first' : '';

/** Words by which a line is chosen stand before its name: a narrow screen cuts the end. */
const marked = (...words: readonly string[]): string => {
  const told = words.filter((word) => word !== '');
  return told.length === 0 ? '' : `[${told.join('; ')}]  `;
};

/** What became of a check already. */
function passedWords(story: Story, id: string): string {
  const found = lastFinding(story, id);
  if (found !== undefined) return `done: ${findingWords(found, currentLeg(story))}`;
  const skipped = story.skipped.find(({ check }) => check === id);
  return skipped === undefined ? '' : `passed over: ${skipped.reason}`;
}

function suspectLine(story: Story, { id, repaired, chance }: SuspectLine): Choice {
  const cause = currentLeg(story).tree.causes[id];
  const minutes = minutesBefore(story, `${cause?.repair.minutes ?? 0} min`.padStart(7));
  const held = heldWords(story, { kind: 'repair', cause: id });
  return {
    id,
    label: `${minutes}${marked(held)}${cause?.name ?? id}`,
    ...(repaired && { group: 'repaired' }),
    ...(!repaired && chance !== undefined && { group: gradeOf(chance) }),
  };
}
