import type { Action } from '../../../core/session/action.ts';
import { currentLeg } from '../../../core/session/story.ts';
import { isOwn } from '../../../core/tree/own/bare.ts';
import { inform, object, show, transition, type Transition } from '../../effect.ts';
import type { KeyPress, Mode } from '../../keys/command.ts';
import { moved, picked } from '../../keys/cursor.ts';
import { steps } from '../../keys/walk.ts';
import type { Page } from '../../page.ts';
import { walk, type At } from '../../screen.ts';
import type { State } from '../../state.ts';
import { takeAction } from '../../take-action.ts';
import { edited, edits } from '../../typing/edit.ts';
import { isEmpty } from '../../typing/typing.ts';
import { afterAction } from '../../walk/answer.ts';
import {
  askedNext,
  emptyNameForm,
  fieldAt,
  fieldsOf,
  kinds,
  offeredChecks,
  withAnswer,
  type NamedThing,
  type NameForm,
  type OfferedCheck,
} from './form.ts';

type Screen = At<'own-check'> | At<'own-cause'>;

/** Where something else is due; what stands on the page of keys where nothing is, `walk.ts` has. */
const otherSteps = steps.filter((step) => step !== 'own');

const mode = ({ form }: Screen): Mode => (fieldAt(form) === 'does' ? 'list' : 'form-text');

export const ownCheckPage: Page<'own-check'> = {
  mode: (screen) => mode(screen),
  update,
  open: (state) => open(state, testDue(state) ? 'test' : 'check'),
  bindings: [
    {
      modes: otherSteps,
      keys: ['N'],
      command: 'own-check',
      about: 'in a job without a tree: name a check of your own, or take one of the library',
    },
  ],
};

/** Opened from the page that asks what comes next, where `walk.ts` has its key. */
export const ownCausePage: Page<'own-cause'> = {
  mode: (screen) => mode(screen),
  update,
  open: (state) => open(state, 'cause'),
};

/** Whether it must be said first how the complaint is made to happen. */
const testDue = ({ session }: State): boolean =>
  session?.story.due.kind === 'own' && session.story.due.test;

function open(state: State, names: NamedThing): Transition {
  const { session } = state;
  if (session === undefined) return transition(state);
  if (!isOwn(currentLeg(session.story).tree))
    return inform(state, 'This complaint has a tree: o has its checks, r its causes, n a note.');
  return ask(state, emptyNameForm(names));
}

const ask = (state: State, form: NameForm): Transition =>
  show(state, { kind: form.names === 'cause' ? 'own-cause' : 'own-check', form });

/** The checks of the library that are offered now. */
export const offeredNow = ({ library, session }: State, form: NameForm): readonly OfferedCheck[] =>
  session === undefined
    ? []
    : offeredChecks(form, library, {
        facts: session.story.facts,
        group: currentLeg(session.story).tree.group,
      });

function update(state: State, { form }: Screen, press: KeyPress): Transition {
  if (press.command === 'go-back')
    return form.at === 0 ? show(state, walk) : ask(state, askedNext(withAnswer(form), form.at - 1));
  return fieldAt(form) === 'does' ? updateKind(state, form, press) : updateText(state, form, press);
}

function updateKind(state: State, form: NameForm, press: KeyPress): Transition {
  const kind = picked(form.cursor, press, kinds);
  return kind === undefined
    ? ask(state, { ...form, cursor: moved(form.cursor, press.command, kinds.length) })
    : onward(state, withAnswer(form, kind.id));
}

function updateText(state: State, form: NameForm, press: KeyPress): Transition {
  if (edits(press.command))
    return ask(state, { ...form, cursor: -1, typed: edited(form.typed, press) });
  const offered = offeredNow(state, form);
  if (press.command === 'up' || press.command === 'down') {
    const step = press.command === 'up' ? -1 : 1;
    const cursor = Math.max(-1, Math.min(offered.length - 1, form.cursor + step));
    return ask(state, { ...form, cursor });
  }
  if (press.command !== 'choose') return transition(state);
  const taken = offered[form.cursor];
  if (taken !== undefined)
    return afterAction(
      takeAction(state, { do: 'take-check', tree: taken.tree, check: taken.check }),
    );
  const field = fieldAt(form);
  if (isEmpty(form.typed) && (field === 'what' || field === 'name'))
    return object(state, { message: 'Say it in a few words,', mend: 'or Esc to leave it.' });
  return onward(state, withAnswer(form));
}

/** To the next question, or, after the last, into the record. */
function onward(state: State, form: NameForm): Transition {
  return form.at + 1 < fieldsOf(form).length
    ? ask(state, askedNext(form, form.at + 1))
    : afterAction(takeAction(state, actionOf(form)));
}

function actionOf({ names, answers }: NameForm): Action {
  const { what = '', does, good, bad, name = '', where } = answers;
  if (names === 'cause') return { do: 'name-cause', name, ...said('where', where) };
  const kind = kinds.find(({ id }) => id === does)?.id;
  return {
    do: 'name-check',
    what,
    ...said('good', good),
    ...said('bad', bad),
    ...(names === 'test' ? { test: true } : kind !== undefined && { does: kind }),
  };
}

const said = <K extends string>(key: K, text: string | undefined): { readonly [P in K]?: string } =>
  text === undefined || text === '' ? {} : ({ [key]: text } as { readonly [P in K]: string });
