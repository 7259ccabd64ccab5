import { nextBag } from '../../core/session/apart/apart.ts';
import type { Action } from '../../core/session/action.ts';
import { object, show, transition, type Transition } from '../effect.ts';
import type { KeyPress } from '../keys/command.ts';
import { steps } from '../keys/walk.ts';
import type { Page } from '../page.ts';
import { home, walk, type At } from '../screen.ts';
import type { State } from '../state.ts';
import { takeAction } from '../take-action.ts';
import { fieldAt, forms, inForm } from '../typing/form.ts';
import { textOf, typing } from '../typing/typing.ts';

/** A part that came off, with its bag; or, behind a plus, what was put on for a while. */
export const partOffPage: Page<'part-off'> = {
  mode: () => 'form-text',
  update,
  open: (state) =>
    state.session === undefined
      ? show(state, home)
      : show(state, {
          kind: 'part-off',
          at: 0,
          fields: {
            part: typing(),
            where: typing(),
            fasteners: typing(),
            routing: typing(),
            bag: typing(String(nextBag(state.session.story))),
          },
        }),
  bindings: [
    {
      modes: steps,
      keys: ['p'],
      command: 'part-off',
      hint: 'part off',
      about: 'a part taken off, with its bag; or with + an aid put on: bridge, jumper, clamp, plug',
    },
  ],
};

function update(state: State, screen: At<'part-off'>, press: KeyPress): Transition {
  const aid = /^\s*\+\s*(\S.*)$/.exec(textOf(screen.fields.part))?.[1];
  // An aid has no bag and no fasteners: its name is all.
  if (press.command === 'choose' && fieldAt('part-off', screen.at) === 'part' && aid !== undefined)
    return kept(state, { do: 'aid-on', aid: aid.trim() });
  const pressed = inForm(screen, forms['part-off'], press);
  if (pressed.kind === 'done') return keep(state, screen);
  return show(state, pressed.kind === 'left' ? walk : { ...screen, ...pressed.form });
}

function keep(state: State, screen: At<'part-off'>): Transition {
  const { fields } = screen;
  const [part, where, fasteners, routing, typed] = forms['part-off'].map((field) =>
    textOf(fields[field]).trim(),
  );
  if (part === undefined || part === '')
    return object(
      { ...state, screen: { ...screen, at: 0 } },
      { message: 'The part has no name:', mend: 'say which part is off, or Esc to go back.' },
    );
  const bag = readBag(typed ?? '');
  if (bag === undefined)
    return object(state, {
      message: `"${typed ?? ''}" is no bag:`,
      mend: 'type its number, or none.',
    });
  return kept(state, {
    do: 'part-off',
    part,
    ...(where !== '' && { where }),
    ...(fasteners !== '' && { fasteners }),
    ...(routing !== '' && { routing }),
    bag,
  });
}

/** A bag as it is typed; an empty field is no bag. */
function readBag(text: string): number | 'none' | undefined {
  if (/^(|none|no|no bag|-)$/i.test(text)) return 'none';
  const number = /^(?:bag\s*)?([1-9]\d{0,3})$/i.exec(text)?.[1];
  return number === undefined ? undefined : Number(number);
}

function kept(state: State, action: Action): Transition {
  const acted = takeAction(state, action);
  return acted.outcome.kind === 'refused'
    ? acted
    : transition({ ...acted.state, screen: walk }, ...acted.effects);
}
