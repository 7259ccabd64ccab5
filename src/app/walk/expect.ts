import { expectedLabel, expectedNow } from '../../core/session/expecting/expected.ts';
import { currentLeg, type Story } from '../../core/session/story.ts';
import { inform, show, transition, type Transition } from '../effect.ts';
import type { KeyPress } from '../keys/command.ts';
import { moved, picked } from '../keys/cursor.ts';
import type { Page } from '../page.ts';
import { walk, type At } from '../screen.ts';
import type { State } from '../state.ts';
import { takeAction } from '../take-action.ts';
import { afterAction } from './answer.ts';

/** What a check can show, to say which of it is expected. */
export const expectLines = (story: Story, check: string) =>
  currentLeg(story).tree.checks[check]?.results ?? [];

/** One optional key before an answer: `e`, then the number. No line is marked at first. */
export const expectPage: Page<'expect'> = { mode: () => 'list', open, update };

function open(state: State): Transition {
  const { session } = state;
  const asked = state.question.due?.asked;
  if (session === undefined || asked === undefined) return transition(state);
  if (asked.purpose === 'correct')
    return inform(state, 'This was answered before: nothing is expected of it any more.');
  const kept = expectedNow(session.story, asked.id);
  return kept === undefined
    ? show(state, { kind: 'expect', cursor: -1, check: asked.id })
    : inform(state, `Kept already: you expect "${wordsOf(session.story, kept)}". b takes it back.`);
}

const wordsOf = (story: Story, { check, result }: { check: string; result: string }): string =>
  expectedLabel(story, check, result);

function update(state: State, screen: At<'expect'>, press: KeyPress): Transition {
  const { session } = state;
  if (session === undefined || press.command === 'go-back') return show(state, walk);
  const { check } = screen;
  const lines = expectLines(session.story, check);
  const line = picked(screen.cursor, press, lines);
  if (line === undefined)
    return show(state, { ...screen, cursor: moved(screen.cursor, press.command, lines.length) });
  const acted = afterAction(takeAction(state, { do: 'expect', check, result: line.id }));
  if (acted.state.screen.kind !== 'walk') return acted;
  const told = inform(acted.state, `Kept: you expect "${line.label}". Now look, and answer.`);
  return transition(told.state, ...acted.effects);
}
