import { parseSheet } from '../../core/session/book.ts';
import { parseConditions } from '../../core/session/rules/vehicle.ts';
import type { Story } from '../../core/session/story.ts';
import { newVehicle } from '../../core/session/vehicle/vehicle.ts';
import { firstOf, type Parsed } from '../../core/problem.ts';
import { misfit } from '../../core/tree/fit.ts';
import { picked } from '../keys/cursor.ts';
import { searched } from '../keys/search.ts';
import { isEmpty, textOf } from '../typing/typing.ts';
import { edited, edits } from '../typing/edit.ts';
import { inform, object, show, type Transition, transition } from '../effect.ts';
import type { Page } from '../page.ts';
import { home, walk, type At, type Screen } from '../screen.ts';
import { figureOf } from './start-book.ts';
import {
  answered,
  askedAt,
  choicesShown,
  chosenVehicle,
  complaintForm,
  emptyForm,
  fields,
  forgetVehicle,
  knownVehicle,
  legForm,
  somethingElse,
  withTyped,
  type Field,
  type Offered,
  type StartForm,
} from './start-form.ts';
import { headerFrom, takeUp } from './start-answers.ts';
import type { State } from '../state.ts';
import { takeAction } from '../take-action.ts';
import { afterAction } from '../walk/answer.ts';
import type { KeyPress } from '../keys/command.ts';

export const startPage: Page<'start'> = {
  mode: ({ form }, state) => {
    const offered = offeredIn(state);
    return offered !== undefined && isText(form, offered) ? 'form-text' : 'form-choice';
  },
  update: updateStart,
  open: openStart,
};

/** A new job: its first question, and the trees to answer it with. */
export function openStart(state: State): Transition {
  const form = emptyForm(state.settings);
  return show(state, { kind: 'start', form }, { kind: 'load-library' }, { kind: 'load-vehicles' });
}

/** Another complaint on the job that is open. */
export const openComplaint = (state: State): Transition =>
  show(
    state,
    { kind: 'start', form: complaintForm },
    { kind: 'load-library' },
    { kind: 'load-vehicles' },
  );

/** On to the tree that this one leads to; what it asks of the vehicle and nobody said yet comes first. */
export function openLeg(
  state: State,
  { tree, reason }: { tree: string; reason: string },
): Transition {
  const form = legForm(tree);
  const offered = offeredIn(state);
  return offered === undefined || fields(form, offered).length === 0
    ? afterAction(takeAction(state, { do: 'leg', tree, reason }))
    : show(state, { kind: 'start', form }, { kind: 'load-vehicles' });
}

/** What the questions are asked from; undefined until the trees are loaded. */
export const offeredIn = ({
  library,
  vehicles,
  session,
}: Pick<State, 'library' | 'vehicles' | 'session'>): Offered | undefined =>
  library && { library, vehicles, job: session?.story };

function updateStart(state: State, screen: At<'start'>, press: KeyPress): Transition {
  const { form } = screen;
  const offered = offeredIn(state);
  if (offered === undefined) return show(state, leftTo(form));
  if (press.command === 'go-back' || (press.command === 'up' && isText(form, offered)))
    return goBack(state, withTyped(form, offered), offered);
  const field = fields(form, offered)[form.at];
  if (field === undefined) return transition(state);
  return field.kind === 'text'
    ? updateText(state, form, field, press)
    : updateChoice(state, form, field, press);
}

/** Answers the first question from the command line. */
export function chooseTree(state: State, tree: string): Transition {
  if (state.library?.trees.some(({ id }) => id === tree) === true)
    return onward(state, answered(emptyForm(state.settings), 'tree', tree));
  return object(state, { message: `There is no tree "${tree}";`, mend: 'choose one of these.' });
}

const isText = (form: StartForm, offered: Offered): boolean =>
  fields(form, offered)[form.at]?.kind === 'text';

function goBack(state: State, form: StartForm, offered: Offered): Transition {
  if (form.sought !== '') return ask(state, { ...form, sought: '', cursor: -1 });
  if (form.at === 0) return show(state, leftTo(form));
  return ask(state, askedAt(form, form.at - 1, offered));
}

const leftTo = ({ begins }: StartForm): Screen => (begins === 'job' ? home : walk);

const ask = (state: State, form: StartForm): Transition => show(state, { kind: 'start', form });

type TextField = Extract<Field, { kind: 'text' }>;

function updateText(state: State, form: StartForm, field: TextField, press: KeyPress): Transition {
  if (edits(press.command)) return ask(state, { ...form, typed: edited(form.typed, press) });
  if (press.command !== 'choose' && press.command !== 'down') return transition(state);
  if (field.id === 'vehicle' && isEmpty(form.typed))
    return object(state, {
      message: 'Give the vehicle a name,',
      mend: 'such as "Orchard van".',
    });
  if (field.id === 'own' && isEmpty(form.typed))
    return object(state, { message: 'Say what is wrong,', mend: 'as the owner would say it.' });
  const filled = answered(form, field.id, textOf(form.typed));
  const read = readText(state, filled, field.id);
  if (read?.kind === 'bad') return object(state, firstOf(read.problems));
  return field.id === 'vehicle' ? chosen(state, filled) : onward(state, filled);
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
  const choices = choicesShown(field, form);
  const choice = picked(form.cursor, press, choices);
  if (choice !== undefined) return chosen(state, withChoice(form, field.id, choice.id));
  if (press.command === 'choose')
    return inform(state, 'No line is marked: press its number, or mark it with the arrows.');
  return ask(state, { ...form, ...searched(form, press, choices.length) });
}

/** What was said of one vehicle is not said of another. */
function withChoice(form: StartForm, id: string, choice: string): StartForm {
  const other = id === knownVehicle && form.answers[id] !== choice;
  const chosenSo = answered(other ? forgetVehicle(form) : form, id, choice);
  // What no complaint has in its words are the first words of this one.
  return choice === somethingElse && form.sought !== ''
    ? answered(chosenSo, 'own', form.sought)
    : chosenSo;
}

/** On with what was chosen, unless the tree is wrong for such a vehicle. */
function chosen(state: State, form: StartForm): Transition {
  const tree = state.library?.trees.find(({ id }) => id === form.answers['tree']);
  const { facts } = jobOf(state, form) ?? chosenVehicle(form, state.vehicles) ?? newVehicle('');
  const wrong = tree && misfit(tree, { ...facts, ...form.answers });
  if (wrong !== undefined) return object(state, wrong);
  const vehicle = chosenVehicle(form, state.vehicles);
  const { state: next, effects } = onward(state, form);
  return vehicle === undefined || state.past?.vehicle === vehicle.name
    ? transition(next, ...effects)
    : transition(next, ...effects, { kind: 'look-back', vehicle });
}

/** To the next question, or, after the last, to a new session. */
function onward(state: State, form: StartForm): Transition {
  const offered = offeredIn(state);
  if (offered === undefined) return transition(state);
  if (form.at + 1 < fields(form, offered).length)
    return ask(state, askedAt(form, form.at + 1, offered));
  const job = jobOf(state, form);
  if (job !== undefined) return takeUp(state, form, offered);
  const header = headerFrom(state, form, offered.library);
  if (header.kind === 'bad') return object(state, firstOf(header.problems));
  const effect = { kind: 'create-session' as const, header: header.value };
  return show(state, { kind: 'start', form }, effect);
}

/** The job on which a complaint is taken up or led on to; undefined where one is begun. */
const jobOf = ({ session }: State, { begins }: StartForm): Story | undefined =>
  begins === 'job' ? undefined : session?.story;
