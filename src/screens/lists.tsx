import { Box } from 'ink';
import { apart, endings, otherChecks, suspects } from '../app/lists.ts';
import type { Screen } from '../app/screen.ts';
import { currentLeg, lastFinding, type Story } from '../core/session/story.ts';
import { count } from '../core/text.ts';
import { Choices, Line, type Choice } from './parts.tsx';
import { findingWords } from './wording.ts';

type ListScreen = Extract<Screen, { kind: 'others' | 'suspects' | 'apart' | 'close' }>;
type ListsProps = { readonly story: Story; readonly screen: ListScreen; readonly rows: number };

const titles = {
  others: 'OTHER CHECKS: pick the one to do now',
  suspects: 'REPAIR: pick the cause you condemn',
  apart: 'APART: what is off or open; Enter when it is back',
  close: 'CLOSE: how does it end?',
} as const;

/** The lists that stand over the walk. */
export function ListBody({ story, screen, rows }: ListsProps) {
  const choices = linesOf(story, screen.kind);
  return (
    <>
      <Box paddingX={1} flexDirection="column" flexShrink={0}>
        <Line as="title">{titles[screen.kind]}</Line>
      </Box>
      {choices.length === 0 ? (
        <Box paddingX={1}>
          <Line>Nothing is off and nothing is open.</Line>
        </Box>
      ) : (
        <Choices choices={choices} cursor={screen.cursor} rows={rows - 1} />
      )}
    </>
  );
}

function linesOf(story: Story, kind: ListScreen['kind']): readonly Choice[] {
  switch (kind) {
    case 'others':
      return otherChecks(story).map(({ id, minutes }) => otherLine(story, id, minutes));
    case 'suspects':
      return suspects(story).map(({ id, repaired }) => suspectLine(story, id, repaired));
    case 'apart':
      return apart(story).map(({ name }, index) => ({ id: `${index} ${name}`, label: name }));
    case 'close':
      return endings.map(({ as, label }) => ({ id: as, label }));
  }
}

function otherLine(story: Story, id: string, minutes: number): Choice {
  const leg = currentLeg(story);
  const found = lastFinding(story, id);
  const skipped = story.skipped.find(({ check }) => check === id);
  const note =
    found !== undefined
      ? `  [done: ${findingWords(found, leg)}]`
      : skipped !== undefined
        ? `  [passed over: ${skipped.reason}]`
        : '';
  return { id, label: `${count(minutes, 'min', 'min')}  ${leg.tree.checks[id]?.ask ?? id}${note}` };
}

function suspectLine(story: Story, id: string, repaired: boolean): Choice {
  const cause = currentLeg(story).tree.causes[id];
  return {
    id,
    label: `${cause?.name ?? id}, ${cause?.repair.minutes ?? 0} min${repaired ? '  [repaired]' : ''}`,
  };
}
