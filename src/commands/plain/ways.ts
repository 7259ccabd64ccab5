import type { Binding, Mode } from '../../app/keys/command.ts';
import { isField } from '../../app/keys/field.ts';
import { bindingsOf, hints, keyName } from '../../app/keys/keymap.ts';
import { isTyped } from '../../app/keys/tokens.ts';
import { bindings } from '../../app/pages/table.ts';
import { edits } from '../../app/typing/edit.ts';
import type { State } from '../../app/state.ts';
import { leaveLine, resultMark } from './typed-line.ts';

const byNumber = 'A number: that line.';
const reading = `The reading as it is shown, such as 12.6, with its unit or without. ${resultMark}2: the second result, without a reading.`;
const marking = 'A number marks its line; y says that it is so.';

/** How a mode is answered, where its question does not say it in the same words. */
const answers: Partial<Readonly<Record<Mode, string>>> = {
  home: byNumber,
  look: 'A number: that result.',
  measure: reading,
  reading,
  insist: '!: it is really so. Another reading counts instead; an empty line: read again.',
  condition: 'Type it, with its unit or without.',
  list: byNumber,
  worker: byNumber,
  settings: byNumber,
  vehicle: byNumber,
  timers: 'A number: start it, stop it, or type one.',
  search: `${byNumber} Letters: only the lines that have them.`,
  'form-choice': `${byNumber} Letters: only the lines that have them.`,
  apart: marking,
  close: marking,
  'before-proof': marking,
  history: 'A number marks its line.',
  text: `Type it. An empty line: nothing. ${leaveLine} leaves it.`,
  'form-text': `Type it. An empty line goes on. ${leaveLine} goes back.`,
  photo: `Type it. An empty line goes on. ${leaveLine} goes back.`,
  replay: 'An empty line: one decision on. A number or a time: there.',
  asked: 'y: yes. Anything else: no.',
};

/** Where a check of one's own is named, one of the library can be taken instead. */
const ofLibrary = `Words with a ? behind them: the checks of the library that have them; ${resultMark}1 takes the first.`;

const rest = [
  'An empty line says the question again, and records nothing.',
  'The end of the input (Ctrl+D; on Windows Ctrl+Z, then Enter) puts the job down and leaves: all is kept.',
];

/** A key as it is typed in a line; undefined for one that only moves or edits on a screen. */
function lineName(key: string): string | undefined {
  if (key === 'esc') return leaveLine;
  return isTyped(key) && key !== ' ' ? key : undefined;
}

type Asked = Pick<State, 'question' | 'screen'>;

/** How the question is answered and what else can be said, in two lines at most before they are folded. */
export function shortWays(state: Asked): readonly string[] {
  const { mode } = state.question;
  const said = mode === 'asked' || isField(mode) ? [] : keysIn(mode);
  return [
    ...answersOf(state),
    ...(said.length === 0 ? [] : [`Or: ${[...said, '? all'].join(', ')}.`]),
  ];
}

function answersOf({ question: { mode }, screen }: Asked): readonly string[] {
  const answer = answers[mode];
  return [
    ...(answer === undefined ? [] : [answer]),
    ...(screen.kind === 'own-check' && mode === 'form-text' && screen.form.at === 0
      ? [ofLibrary]
      : []),
  ];
}

const keysIn = (mode: Mode): readonly string[] =>
  hints(bindings, mode).flatMap(({ key, hint }) => {
    const name = lineName(key);
    return name === undefined || hint === 'keys' ? [] : [`${name} ${hint}`];
  });

/** Everything that a line can be on this screen. */
export function allWays(state: Asked): readonly string[] {
  const { mode } = state.question;
  return [...answersOf(state), ...bindingsOf(bindings, mode).flatMap(wayOf), ...rest];
}

/** The page of keys is this list itself, and what leaves is the end of the input. */
const notHere: ReadonlySet<Binding['command']> = new Set<Binding['command']>([
  'keys',
  'redraw',
  'read-on',
  'read-back',
  'type',
]);

function wayOf({ keys, command, about }: Binding): readonly string[] {
  if (notHere.has(command) || edits(command)) return [];
  const names = keys.flatMap((key) =>
    /^C-[^c]$/.test(key) ? [keyName(key)] : (lineName(key) ?? []),
  );
  return names.length === 0 ? [] : [`${names.join(' or ')}: ${about}`];
}
