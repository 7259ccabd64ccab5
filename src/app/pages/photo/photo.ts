import type { ActionOf } from '../../../core/session/action.ts';
import { inform, object, show, transition, type Transition } from '../../effect.ts';
import type { KeyPress } from '../../keys/command.ts';
import { moved } from '../../keys/cursor.ts';
import { steps } from '../../keys/walk.ts';
import type { Message } from '../../message.ts';
import type { Page } from '../../page.ts';
import { walk, type At } from '../../screen.ts';
import type { State } from '../../state.ts';
import { takeAction } from '../../take-action.ts';
import { edited, edits } from '../../typing/edit.ts';
import { forms } from '../../typing/form.ts';
import { isEmpty, textOf, typing } from '../../typing/typing.ts';
import { partAt } from '../../walk/board.ts';
import { withoutFolder } from '../../wording.ts';

/** A photo by its path: typed, pasted, or dropped on the terminal. */
export const photoPage: Page<'photo'> = {
  mode: () => 'photo',
  update,
  open: (state) => show(state, emptyPhoto(state)),
  bindings: [
    {
      modes: [...steps, 'closed', 'apart'],
      keys: ['P'],
      command: 'photo',
      about:
        'keep a photo with this step, on the board with the marked part: by its path, or from the phone',
    },
  ],
};

/** What a photo belongs to: on the board the marked part, else the check or the cause on the walk behind the page. */
const emptyPhoto = ({ question: { due }, screen, session }: State): At<'photo'> => ({
  kind: 'photo',
  at: 0,
  fields: { path: typing(), caption: typing() },
  about:
    (screen.kind === 'apart' && session !== undefined
      ? partAt(session.story, screen.order, screen.cursor)
      : undefined) ??
    due?.asked?.id ??
    due?.cause?.id,
});

function update(state: State, screen: At<'photo'>, press: KeyPress): Transition {
  const { at, fields } = screen;
  const field = forms.photo[at] ?? 'path';
  if (press.command === 'go-back') return show(state, walk);
  if (edits(press.command))
    return show(state, { ...screen, fields: { ...fields, [field]: edited(fields[field], press) } });
  if (press.command === 'choose' && isEmpty(fields.path)) return noPath(state, screen);
  if (press.command === 'choose' && at === forms.photo.length - 1)
    return transition(state, { kind: 'keep-photo', action: photoAction(screen) });
  const command = press.command === 'choose' ? 'down' : press.command;
  return show(state, { ...screen, at: moved(at, command, forms.photo.length) });
}

const noPath = (state: State, screen: At<'photo'>): Transition =>
  object(
    { ...state, screen: { ...screen, at: 0 } },
    { message: 'Say where the photo is:', mend: 'type, paste or drop its path; or Esc.' },
  );

function photoAction({ fields: { path, caption }, about }: At<'photo'>): ActionOf<'photo'> {
  const text = textOf(caption).trim();
  return {
    do: 'photo',
    file: textOf(path).trim(),
    ...(text !== '' && { caption: text }),
    ...(about !== undefined && { about }),
  };
}

/** It lies beside the session: now it is recorded. */
export function photoKept(
  state: State,
  { action, photo }: Extract<Message, { kind: 'photo-kept' }>,
): Transition {
  const acted = takeAction(state, action, photo);
  if (acted.outcome.kind === 'refused') return acted;
  const told = inform({ ...acted.state, screen: walk }, `Photo: ${withoutFolder(photo.file)}`);
  return transition(told.state, ...acted.effects);
}
