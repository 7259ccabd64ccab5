import { baselineLines, type BaselineLine } from '../../core/session/baseline/baseline.ts';
import type { Action } from '../../core/session/action.ts';
import { inform, object, show, transition, type Transition } from '../effect.ts';
import type { KeyPress } from '../keys/command.ts';
import { moved, picked } from '../keys/cursor.ts';
import { steps } from '../keys/walk.ts';
import type { Page } from '../page.ts';
import { home, walk, type At } from '../screen.ts';
import type { OpenSession, State } from '../state.ts';
import { takeAction } from '../take-action.ts';
import { edited, edits } from '../typing/edit.ts';
import { textOf, typing, type Typing } from '../typing/typing.ts';
import { chooseCheck } from '../walk/answer.ts';

/** What is taken down before anything is disturbed: checks of the tree, then the shop's list. */
export const baselinePage: Page<'baseline'> = {
  mode: ({ typed }) => (typed === undefined ? 'list' : 'text'),
  // No line is marked at first: Enter held down begins no check.
  open: (state) => show(state, { kind: 'baseline', cursor: -1 }),
  update,
  bindings: [
    {
      modes: steps,
      keys: ['B'],
      command: 'baseline',
      about: 'the baseline: what is taken down before anything is disturbed',
    },
  ],
};

/** The next line from one on that nobody has answered yet; else that line. */
function openFrom(session: OpenSession | undefined, from: number): number {
  const lines = session === undefined ? [] : baselineLines(session.story);
  const next = lines.findIndex(
    ({ state, first }, at) => at >= from && state === 'open' && first === undefined,
  );
  return next < 0 ? from : next;
}

const marks = { open: '[ ]', taken: '[x]', 'passed over': '[-]' } as const;

/** The lines as they stand on the page, each with what it asks of the keys. */
export const baselineRows = ({ story }: Pick<OpenSession, 'story'>) =>
  baselineLines(story).map((line) => ({
    words: `${marks[line.state]} ${line.say.replace(/[:.]$/, '')}: ${line.words}`.replace(
      /: $/,
      '',
    ),
    about: aboutLine(line),
  }));

function aboutLine({ kind, state, first }: BaselineLine): string {
  if (kind === 'check')
    return state === 'open'
      ? 'Enter or its number: make this check of the tree now.'
      : 'A check of the tree: t has it, to take back or answer anew.';
  if (first !== undefined) return `Waits: first "${first}" Or - and why it is passed over.`;
  return 'Enter or its number: type what was seen. With a minus before it: why it is passed over.';
}

function update(state: State, screen: At<'baseline'>, press: KeyPress): Transition {
  const { session } = state;
  if (session === undefined) return show(state, home);
  const lines = baselineLines(session.story);
  if (screen.typed !== undefined) return updateTyped(state, screen, screen.typed, press);
  if (press.command === 'go-back') return show(state, walk);
  const line = picked(screen.cursor, press, lines);
  if (line === undefined)
    return show(state, { ...screen, cursor: moved(screen.cursor, press.command, lines.length) });
  if (line.kind === 'check')
    return line.state === 'open'
      ? chooseCheck(state, session.story, line.id)
      : inform(state, 'That check was answered: t has it.');
  const known = line.state === 'passed over' ? `- ${line.words}` : line.words;
  return show(state, { kind: 'baseline', cursor: lines.indexOf(line), typed: typing(known) });
}

function updateTyped(
  state: State,
  screen: At<'baseline'>,
  typed: Typing,
  press: KeyPress,
): Transition {
  const left: At<'baseline'> = { kind: 'baseline', cursor: screen.cursor };
  if (press.command === 'leave-field') return show(state, left);
  if (edits(press.command)) return show(state, { ...screen, typed: edited(typed, press) });
  const line = state.session && baselineLines(state.session.story)[screen.cursor];
  if (press.command !== 'choose' || line === undefined) return transition(state);
  const text = textOf(typed).trim();
  if (text === '') return show(state, left);
  if (text === '-')
    return object(state, { message: 'Say why behind the minus,', mend: 'or Esc to go back.' });
  const acted = takeAction(state, said(line.id, text));
  if (acted.outcome.kind === 'refused') return acted;
  const next = { kind: 'baseline' as const, cursor: openFrom(acted.state.session, screen.cursor) };
  return transition({ ...acted.state, screen: next }, ...acted.effects);
}

/** What was seen; behind a minus, why it is passed over. */
function said(item: string, text: string): Action {
  const reason = /^[-−]\s*(\S.*)$/.exec(text)?.[1];
  return reason === undefined
    ? { do: 'baseline', item, seen: text }
    : { do: 'baseline', item, reason };
}
