import { parseSheet } from '../../core/session/book.ts';
import type { Header } from '../../core/session/header/header.ts';
import { newHeader } from '../../core/session/header/new-header.ts';
import { parseConditions } from '../../core/session/rules/vehicle.ts';
import { bad, firstOf, good, type Parsed } from '../../core/problem.ts';
import type { Library } from '../../core/tree/shop.ts';
import { moved, picked, typedOn } from '../keys/cursor.ts';
import { object, show, type Transition, transition } from '../effect.ts';
import type { Page } from '../page.ts';
import { home, type At } from '../screen.ts';
import {
  emptyForm,
  fields,
  figureOf,
  notKnown,
  typedSheet,
  type Field,
  type StartForm,
} from './start-form.ts';
import type { State } from '../state.ts';
import type { KeyPress } from '../keys/command.ts';

export const startPage: Page<'start'> = {
  mode: ({ form }, { library }) =>
    library !== undefined && isText(form, library) ? 'form-text' : 'form-choice',
  update: updateStart,
  open: openStart,
};

/** A new job: its first question, and the trees to answer it with. */
export function openStart(state: State): Transition {
  const form = emptyForm(state.settings);
  return show(state, { kind: 'start', form }, { kind: 'load-library' });
}

function updateStart(state: State, screen: At<'start'>, press: KeyPress): Transition {
  const { library } = state;
  const { form } = screen;
  if (library === undefined) return show(state, home);
  if (press.command === 'go-back' || (press.command === 'up' && isText(form, library)))
    return goBack(state, form);
  const field = fields(form, library)[form.at];
  if (field === undefined) return transition(state);
  return field.kind === 'text'
    ? updateText(state, form, field, press)
    : updateChoice(state, form, field, press);
}

/** Answers the first question from the command line. */
export function chooseTree(state: State, tree: string): Transition {
  if (state.library?.trees.some(({ id }) => id === tree) === true)
    return onward(state, answer(emptyForm(state.settings), 'tree', tree));
  return object(state, { message: `There is no tree "${tree}";`, mend: 'choose one of these.' });
}

const isText = (form: StartForm, library: Library): boolean =>
  fields(form, library)[form.at]?.kind === 'text';

function goBack(state: State, form: StartForm): Transition {
  if (form.at === 0) return show(state, home);
  return ask(state, { ...form, at: form.at - 1, cursor: 0 });
}

const ask = (state: State, form: StartForm): Transition => show(state, { kind: 'start', form });

type TextField = Extract<Field, { kind: 'text' }>;

function updateText(state: State, form: StartForm, field: TextField, press: KeyPress): Transition {
  const typed = form.answers[field.id] ?? '';
  if (press.command === 'type' || press.command === 'erase')
    return ask(state, answer(form, field.id, typedOn(typed, press)));
  if (press.command !== 'choose' && press.command !== 'down') return transition(state);
  if (field.id === 'vehicle' && typed.trim() === '')
    return object(state, {
      message: 'Give the vehicle a name,',
      mend: 'such as "Orchard van".',
    });
  const read = readText(state, form, field.id);
  if (read?.kind === 'bad') return object(state, firstOf(read.problems));
  return onward(state, form);
}

/** What was typed, held against what it must be; undefined for what may be anything. */
function readText(
  { library, settings }: State,
  form: StartForm,
  id: string,
): Parsed<unknown> | undefined {
  const tree = library?.trees.find((one) => one.id === form.answers['tree']);
  const figure = figureOf(id, 'book');
  if (figure === undefined || tree === undefined || library === undefined)
    return parseConditions({ [id]: form.answers[id] }, settings.units);
  return parseSheet({ [figure]: { reading: form.answers[id] ?? '' } }, tree, library.shop);
}

function updateChoice(
  state: State,
  form: StartForm,
  field: Extract<Field, { kind: 'choice' }>,
  press: KeyPress,
): Transition {
  const choice = picked(form.cursor, press, field.choices);
  if (choice !== undefined) return onward(state, answer(form, field.id, choice.id));
  return ask(state, { ...form, cursor: moved(form.cursor, press.command, field.choices.length) });
}

const answer = (form: StartForm, id: string, value: string): StartForm => ({
  ...form,
  answers: { ...form.answers, [id]: value },
});

/** To the next question, or, after the last, to a new session. */
function onward(state: State, form: StartForm): Transition {
  const next = { ...form, at: form.at + 1, cursor: 0 };
  if (state.library === undefined) return transition(state);
  if (next.at < fields(next, state.library).length) return ask(state, next);
  const header = headerFrom(state, form, state.library);
  if (header.kind === 'bad') return object(state, firstOf(header.problems));
  const effect = { kind: 'create-session' as const, header: header.value };
  return show(state, { kind: 'start', form }, effect);
}

function headerFrom(state: State, form: StartForm, library: Library): Parsed<Header> {
  const { answers } = form;
  const tree = library.trees.find(({ id }) => id === answers['tree']);
  if (tree === undefined)
    return bad({ code: 'no-tree', message: 'No complaint is chosen.', mend: 'Choose one.' });
  const conditions = parseConditions(answers, state.settings.units);
  if (conditions.kind === 'bad') return conditions;
  const facts = Object.fromEntries(
    Object.entries(answers).filter(
      ([id, value]) => Object.hasOwn(library.shop.facts, id) && value !== notKnown,
    ),
  );
  const sheet = parseSheet(typedSheet(form), tree, library.shop);
  if (sheet.kind === 'bad') return sheet;
  return good(
    newHeader(
      {
        tree,
        shop: library.shop,
        vehicle: (answers['vehicle'] ?? '').trim(),
        facts,
        sheet: sheet.value,
        who: (answers['who'] ?? '').trim(),
        conditions: conditions.value,
        units: state.settings.units,
      },
      state.now.at,
    ),
  );
}
