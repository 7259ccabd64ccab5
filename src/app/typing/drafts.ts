import type { At, Screen, TextPurpose } from '../screen.ts';
import type { State } from '../state.ts';
import { fieldAt } from './form.ts';
import { textOf, type Typing } from './typing.ts';

/** Which field or form of words is open, by a name under which its words wait; undefined for none. */
export function fieldOf(state: State): string | undefined {
  const { screen } = state;
  if ('form' in screen) return formField(state, screen);
  switch (screen.kind) {
    case 'walk':
      return screen.input.kind === 'text' ? walkField(state, screen.input.purpose) : undefined;
    case 'settings':
      return screen.typed && `settings ${screen.cursor}`;
    case 'vehicle':
      return screen.typed && `vehicle ${screen.path ?? ''} ${screen.cursor}`;
    case 'figure':
      return `figure ${screen.page.name}`;
    case 'baseline':
    case 'costs':
    case 'timers':
    case 'mended':
    case 'photo':
    case 'part-off':
      return jobField(state, screen);
    default:
      return undefined;
  }
}

/** A form that asks a question a page. */
const formField = ({ session }: State, screen: At<'start' | 'own-check' | 'own-cause'>): string =>
  screen.kind === 'start' ? screen.kind : `${session?.path ?? ''} ${screen.form.names}`;

/** A field of a page of this job. */
function jobField(
  { session }: State,
  screen: At<'baseline' | 'costs' | 'timers' | 'mended' | 'photo' | 'part-off'>,
) {
  if ('cursor' in screen)
    return screen.typed && `${session?.path ?? ''} ${screen.kind} ${screen.cursor}`;
  const which = screen.kind === 'mended' ? screen.n : '';
  return `${session?.path ?? ''} ${screen.kind} ${which}`;
}

/** Why a step is passed over or taken all the same, and what was found, is said of that step alone. */
function walkField({ session, question: { due } }: State, purpose: TextPurpose): string {
  const ofStep = ['skip', 'despite', 'found', 'shown'].includes(purpose);
  const step = due?.asked?.id ?? due?.cause?.id ?? '';
  return `${session?.path ?? ''} ${purpose} ${ofStep ? step : ''}`;
}

/** What is typed in the field that has the cursor. */
export function typedIn(screen: Screen): Typing | undefined {
  if ('form' in screen) return screen.form.typed;
  switch (screen.kind) {
    case 'walk':
      return screen.input.kind === 'ready' ? undefined : screen.input.typed;
    case 'settings':
    case 'vehicle':
    case 'timers':
    case 'baseline':
    case 'costs':
      return screen.typed;
    case 'figure':
      return screen.page.fields[screen.at]?.typed;
    case 'mended':
      return screen.fields[fieldAt('mended', screen.at)];
    case 'photo':
      return screen.fields[fieldAt('photo', screen.at)];
    case 'part-off':
      return screen.fields[fieldAt('part-off', screen.at)];
    default:
      return undefined;
  }
}

/** Without the words that wait for a field: they were taken, or thrown away. */
export function withoutDraft(state: State, field: string): State {
  const { [field]: _, ...drafts } = state.drafts;
  return { ...state, drafts };
}

/** With the words of a field put by for when it is opened again. */
export const withDraft = (state: State, field: string, left: Screen): State => ({
  ...state,
  drafts: { ...state.drafts, [field]: left },
});

/** A field that was just opened, with the words that wait for it. */
export function withDraftShown(state: State, field: string): State {
  const left = state.drafts[field];
  if (left === undefined) return state;
  const { screen } = state;
  const again =
    screen.kind === 'walk' && left.kind === 'walk' ? { ...screen, input: left.input } : left;
  return { ...withoutDraft(state, field), screen: again };
}

/** All that is typed in a field, or in the fields of its form. */
export function wordsIn(screen: Screen): string {
  if (screen.kind === 'mended' || screen.kind === 'photo')
    return Object.values(screen.fields).map(textOf).join('').trim();
  if (screen.kind === 'part-off') {
    // The bag stands there by itself.
    const { bag: _, ...fields } = screen.fields;
    return Object.values(fields).map(textOf).join('').trim();
  }
  if (screen.kind === 'figure')
    return screen.page.fields
      .map(({ typed }) => textOf(typed))
      .join('')
      .trim();
  const typed = typedIn(screen);
  return typed === undefined ? '' : textOf(typed).trim();
}

/** Whether a draft is worth keeping: there are words in it. */
export const hasWords = (screen: Screen): boolean =>
  screen.kind === 'start' ? Object.keys(screen.form.answers).length > 2 : wordsIn(screen) !== '';
