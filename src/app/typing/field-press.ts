import { inform, transition, type Transition } from '../effect.ts';
import type { KeyPress } from '../keys/command.ts';
import { isField } from '../keys/field.ts';
import type { State } from '../state.ts';
import {
  fieldOf,
  hasWords,
  typedIn,
  wordsIn,
  withDraft,
  withDraftShown,
  withoutDraft,
} from './drafts.ts';
import { lettersIn } from './edit.ts';

/** What a key comes to on its screen. */
type Route = (state: State, press: KeyPress) => Transition;

/** Letters that a field is left without, and nobody is asked. */
const few = 5;

const leaves: ReadonlySet<KeyPress['command']> = new Set<KeyPress['command']>([
  'leave-field',
  'go-back',
  'phone',
  'quit',
]);

/** A key as it counts where there may be a field: what writes by one letter, or leaves words, is asked first. */
export function fieldPress(state: State, press: KeyPress, route: Route): Transition {
  if (state.asked !== undefined) return answered(state, state.asked, press, route);
  const ask = questionBefore(state, press);
  return ask === undefined
    ? kept(state, press, route)
    : inform({ ...state, asked: press }, `${ask} (y: yes)`);
}

function answered(state: State, asked: KeyPress, press: KeyPress, route: Route): Transition {
  const again = notAsked(state);
  if (press.command === 'quit') return kept(again, press, route);
  return press.command === 'confirm' ? kept(again, asked, route) : transition(again);
}

/** It is left at what it was. */
export const notAsked = (state: State): State => ({
  ...state,
  asked: undefined,
  notice: undefined,
});

/** What is asked before a press counts; undefined where it counts at once. */
function questionBefore(state: State, press: KeyPress): string | undefined {
  switch (press.command) {
    case 'unsure':
      return unsureQuestion(state);
    case 'switch-lead':
      return state.settings.lead === 'tree'
        ? 'Let the quicker way lead from now on?'
        : "Let the tree's own way lead from now on?";
    // A capital begins a sentence too: one that would be written is asked about first.
    case 'road':
      return 'A line of the road test?';
    case 'keep':
      return state.session && 'Keep it as a note?';
    case 'quit':
      // One Esc too many while backing out: the keys after it would be the shell's.
      if (state.question.mode === 'home' && press.token === 'esc') return 'Leave the program?';
      return leaving(state, press);
    default:
      return leaving(state, press);
  }
}

function leaving(state: State, press: KeyPress): string | undefined {
  return leaves.has(press.command) && isField(state.question.mode) && holdsWords(state)
    ? 'Leave it? The words wait in this field.'
    : undefined;
}

function unsureQuestion({ question: { due } }: State): string | undefined {
  if (due?.blocker.kind === 'condition') return 'Not known: judge it as it is read?';
  return due?.asked?.purpose === 'check' ? 'Not sure: kept, but no evidence?' : undefined;
}

/** A form that asks one question after the other keeps the words of each by itself. */
function holdsWords({ screen, settings }: State): boolean {
  if (screen.kind === 'start') return false;
  if ((screen.kind === 'own-check' || screen.kind === 'own-cause') && screen.form.at > 0)
    return false;
  const text = wordsIn(screen);
  const known = screen.kind === 'settings' && Object.values(settings).includes(text);
  return !known && lettersIn(text) > few;
}

/** The field is left, or its words are taken, or it stays: what waits for it is kept in step. */
function kept(before: State, press: KeyPress, route: Route): Transition {
  const field = fieldOf(before);
  const { state, effects } = route(before, press);
  const now = fieldOf(state);
  if (now === field) return transition(state, ...effects);
  const left = field === undefined ? state : afterField(before, state, press, field);
  return transition(now === undefined ? left : withDraftShown(left, now), ...effects);
}

const afterField = (before: State, state: State, { command }: KeyPress, field: string): State =>
  leaves.has(command) && hasWords(before.screen)
    ? withDraft(state, field, before.screen)
    : withoutDraft(state, field);

/** A paste is text for a field; anywhere else it is refused, so that pasted lines answer nothing. */
export function paste(before: State, text: string, route: Route): Transition {
  if (before.drawn?.kind === 'too-small') return transition(before);
  const line = text.replace(/\s+/g, ' ').trimEnd();
  const typesOn = before.asked !== undefined && typedIn(before.screen) !== undefined;
  if (!typesOn && !isField(before.question.mode)) return refused(before, line.trim());
  const state = notAsked(before);
  return line === '' ? transition(state) : route(state, { command: 'type', token: line });
}

/** Words where no field is open do nothing; beside a job they wait for a note. */
export function refused(state: State, text: string): Transition {
  const { session, screen } = state;
  if (session === undefined || screen.kind === 'replay')
    return inform(state, 'No field is open here: nothing of that was taken.');
  const note = {
    kind: 'walk',
    input: { kind: 'text', purpose: 'note', typed: { before: text, after: '' } },
  } as const;
  const waits = fieldOf({ ...state, screen: note });
  return inform(
    waits === undefined ? state : withDraft(state, waits, note),
    'No field is open here. Nothing taken; n has it as a note.',
  );
}
