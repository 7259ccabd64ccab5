import type { Action } from '../../core/session/action.ts';
import { parseTimer, spellWords, waitsIn } from '../../core/session/timers/durations.ts';
import { shortLabel, timersAt, timerWords } from '../../core/session/timers/running.ts';
import { bad, firstOf, good, type Parsed } from '../../core/problem.ts';
import { object, show, transition, type Transition } from '../effect.ts';
import type { KeyPress } from '../keys/command.ts';
import { marked, moved } from '../keys/cursor.ts';
import { steps } from '../keys/walk.ts';
import type { Page } from '../page.ts';
import { home, walk, type At } from '../screen.ts';
import type { State } from '../state.ts';
import { takeAction } from '../take-action.ts';
import { edited, edits } from '../typing/edit.ts';
import { textOf, typing } from '../typing/typing.ts';
import { nowIn } from '../practice-clock.ts';
import type { DueOnScreen } from '../walk/question.ts';

type TimerLine = {
  readonly words: string;
  readonly about: string;
  /** What Enter does with the line; the one without an action is typed in. */
  readonly action?: Action;
};

/** The waits of the step on screen, from its own words. */
const stepWaits = ({ asked, cause }: DueOnScreen) =>
  waitsIn(asked?.check.how ?? cause?.cause.repair.do ?? []);

/** What the step speaks of first, then one to type, then those that run. */
export function timerLines({ session, now, question: { due } }: State): readonly TimerLine[] {
  if (session === undefined) return [];
  const waits = due === undefined ? [] : stepWaits(due);
  return [
    ...waits.map(({ seconds, label }) => ({
      words: `Start ${spellWords(seconds)}: ${shortLabel(label)}`,
      about: 'From the words of the step; Enter starts it.',
      action: { do: 'timer', label, minutes: seconds / 60 } as const,
    })),
    { words: 'Another timer:', about: 'How long and what for: 15 min charge, soak 4 h, 90 s.' },
    ...timersAt(session.story, nowIn(session, now)).map((timer) => ({
      words: timerWords(timer),
      about: timer.left > 0 ? 'Enter stops it.' : 'It has run out; Enter puts it away.',
      action: { do: 'timer-off', n: timer.n } as const,
    })),
  ];
}

export const timersPage: Page<'timers'> = {
  mode: ({ typed }) => (typed === undefined ? 'timers' : 'text'),
  // No line is marked at first: Enter by itself starts nothing.
  open: (state) => show(state, { kind: 'timers', cursor: -1 }),
  update,
  bindings: [
    {
      modes: steps,
      keys: ['T'],
      command: 'timers',
      about: 'timers: one the step speaks of, one of your own; stop one or put it away',
    },
    {
      modes: ['timers'],
      keys: ['digit'],
      command: 'pick-line',
      about: 'mark a line by its number',
    },
    {
      modes: ['timers'],
      keys: ['enter'],
      command: 'choose',
      hint: 'start / stop',
      about: 'start, type, stop or put away what the marked line says',
    },
  ],
};

function update(state: State, screen: At<'timers'>, press: KeyPress): Transition {
  if (state.session === undefined) return show(state, home);
  if (screen.typed !== undefined) return updateTyped(state, screen, screen.typed, press);
  if (press.command === 'go-back') return show(state, walk);
  const lines = timerLines(state);
  if (press.command === 'choose') return choose(state, screen, lines[screen.cursor]);
  const line = press.command === 'pick-line' ? marked(screen.cursor, press, lines.length) : -1;
  const cursor = line >= 0 ? line : moved(screen.cursor, press.command, lines.length);
  return show(state, { kind: 'timers', cursor });
}

function choose(state: State, screen: At<'timers'>, line: TimerLine | undefined): Transition {
  if (line === undefined) return transition(state);
  return line.action === undefined
    ? show(state, { ...screen, typed: typing() })
    : acted(state, line.action);
}

/** What was started or stopped is seen on the step, in the line over the keys. */
function acted(state: State, action: Action): Transition {
  const taken = takeAction(state, action);
  return taken.outcome.kind === 'refused'
    ? taken
    : transition({ ...taken.state, screen: walk }, ...taken.effects);
}

function updateTyped(
  state: State,
  screen: At<'timers'>,
  typed: NonNullable<At<'timers'>['typed']>,
  press: KeyPress,
): Transition {
  const left: At<'timers'> = { kind: 'timers', cursor: screen.cursor };
  if (press.command === 'leave-field') return show(state, left);
  if (edits(press.command)) return show(state, { ...screen, typed: edited(typed, press) });
  if (press.command !== 'choose') return transition(state);
  const text = textOf(typed).trim();
  if (text === '') return show(state, left);
  const action = typedTimer(text);
  return action.kind === 'bad'
    ? object(state, firstOf(action.problems))
    : acted(state, action.value);
}

function typedTimer(text: string): Parsed<Action> {
  const timer = parseTimer(text);
  return timer === undefined
    ? bad({
        code: 'no-time',
        message: `"${text}" says no time:`,
        mend: 'type it like 15 min charge.',
      })
    : good({ do: 'timer', label: timer.label, minutes: timer.seconds / 60 });
}
