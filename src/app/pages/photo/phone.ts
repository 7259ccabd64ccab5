import { inform, show, transition, type Transition } from '../../effect.ts';
import type { KeyPress } from '../../keys/command.ts';
import type { Message } from '../../message.ts';
import type { Page } from '../../page.ts';
import { walk, type At, type Screen } from '../../screen.ts';
import type { State } from '../../state.ts';
import { takeAction } from '../../take-action.ts';
import { edited, edits } from '../../typing/edit.ts';
import { isEmpty, textOf, typing } from '../../typing/typing.ts';
import { withoutFolder } from '../../wording.ts';
import { photoKept } from './photo.ts';

/** Photos from a telephone: a code to scan, then the caption of each that comes in. */
export const phonePage: Page<'phone'> = {
  mode: ({ asked }) => (asked.length > 0 ? 'form-text' : 'phone'),
  update,
  open,
  bindings: [
    {
      modes: ['photo'],
      keys: ['C-p'],
      command: 'phone',
      hint: 'from the phone',
      about: 'take the photo with a phone on the same network',
    },
    {
      modes: ['phone'],
      keys: ['t'],
      command: 'turn-code',
      hint: 'dark for light',
      about: 'dark and light of the code change places',
    },
    { modes: ['phone'], keys: ['q', 'esc'], command: 'go-back', hint: 'back', about: 'back' },
  ],
};

function open(state: State): Transition {
  return show(
    state,
    {
      kind: 'phone',
      door: { kind: 'opening' },
      about: state.screen.kind === 'photo' ? state.screen.about : undefined,
      asked: [],
      typed: typing(),
      taken: 0,
      turned: false,
    },
    { kind: 'start-phone' },
  );
}

function update(state: State, screen: At<'phone'>, press: KeyPress): Transition {
  const [first, ...rest] = screen.asked;
  if (first !== undefined)
    return updateCaption(state, { ...screen, asked: [first, ...rest] }, press);
  if (press.command === 'go-back') return show(state, walk);
  return press.command === 'turn-code'
    ? show(state, { ...screen, turned: !screen.turned })
    : transition(state);
}

type Asking = At<'phone'> & {
  readonly asked: readonly [At<'phone'>['asked'][number], ...At<'phone'>['asked']];
};

/** The caption of a photo that is recorded already; it may stay empty. */
function updateCaption(state: State, screen: Asking, press: KeyPress): Transition {
  const [{ n }, ...rest] = screen.asked;
  const next: At<'phone'> = { ...screen, asked: rest, typed: typing() };
  if (edits(press.command)) return show(state, { ...screen, typed: edited(screen.typed, press) });
  if (press.command === 'go-back')
    return isEmpty(screen.typed)
      ? show(state, next)
      : inform(state, 'Enter keeps the caption; Ctrl+U clears it.');
  if (press.command !== 'choose') return transition(state);
  if (isEmpty(screen.typed)) return show(state, next);
  const acted = takeAction(state, { do: 'describe', n, text: textOf(screen.typed).trim() });
  return acted.outcome.kind === 'refused'
    ? acted
    : transition({ ...acted.state, screen: next }, ...acted.effects);
}

/** What has become of the page that a telephone opens, or of a photo from there or by its path. */
export function photosTold(
  state: State,
  message: Extract<
    Message,
    { kind: 'phone-ready' | 'photo-arrived' | 'photo-kept' | 'phone-refused' }
  >,
): Transition {
  switch (message.kind) {
    case 'phone-ready': {
      const { url, code } = message;
      return change(state, (screen) => ({ ...screen, door: { kind: 'open', url, code } }));
    }
    case 'phone-refused': {
      const why = `${message.problem.message} ${message.problem.mend}`;
      return change(state, (screen) => ({ ...screen, door: { kind: 'shut', why } }));
    }
    case 'photo-arrived':
      return arrived(state, message);
    case 'photo-kept':
      return photoKept(state, message);
  }
}

/** It lies beside the session and is recorded at once: its caption can wait. */
function arrived(state: State, { photo }: Extract<Message, { kind: 'photo-arrived' }>): Transition {
  const about = phoneIn(state.screen)?.about;
  const { file } = photo;
  const acted = takeAction(
    state,
    { do: 'photo', file, ...(about !== undefined && { about }) },
    photo,
  );
  if (acted.outcome.kind === 'refused') return acted;
  const { n } = acted.outcome;
  const told = inform(acted.state, `Photo: ${withoutFolder(file)}`);
  const { state: now } = change(told.state, (screen) => ({
    ...screen,
    taken: screen.taken + 1,
    asked: [...screen.asked, { n, file }],
  }));
  return transition(now, ...acted.effects);
}

/** The page of the telephone, or the one that another page was opened from. */
function phoneIn(screen: Screen): At<'phone'> | undefined {
  if (screen.kind === 'phone') return screen;
  return 'from' in screen ? phoneIn(screen.from) : undefined;
}

const change = (state: State, changed: (screen: At<'phone'>) => At<'phone'>): Transition =>
  transition({ ...state, screen: changedIn(state.screen, changed) });

function changedIn(screen: Screen, changed: (phone: At<'phone'>) => At<'phone'>): Screen {
  if (screen.kind === 'phone') return changed(screen);
  return 'from' in screen ? { ...screen, from: changedIn(screen.from, changed) } : screen;
}

/** Whether the page was left: its address leads nowhere then. */
export const isPhoneLeft = (before: Screen, now: Screen): boolean =>
  phoneIn(before) !== undefined && phoneIn(now) === undefined;
