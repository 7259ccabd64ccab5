import type { Action } from '../../core/session/action.ts';
import { parseSheet } from '../../core/session/book.ts';
import type { Header } from '../../core/session/header/header.ts';
import { currencyOf, newHeader } from '../../core/session/header/new-header.ts';
import { parseConditions } from '../../core/session/rules/vehicle.ts';
import { afterStart, forJob } from '../../core/session/vehicle/job.ts';
import { newVehicle, sameVehicle } from '../../core/session/vehicle/vehicle.ts';
import { bad, good, type Parsed } from '../../core/problem.ts';
import { bareTree } from '../../core/tree/own/bare.ts';
import { groupNamed, type Group } from '../../core/tree/groups.ts';
import type { Library } from '../../core/tree/shop.ts';
import { transition, type Transition } from '../effect.ts';
import type { State } from '../state.ts';
import { takeAction } from '../take-action.ts';
import { afterAction } from '../walk/answer.ts';
import { typedSheet } from './start-book.ts';
import {
  chosenVehicle,
  notKnown,
  somethingElse,
  type Offered,
  type StartForm,
} from './start-form.ts';

/** Takes up the complaint; what was told of the vehicle for it is kept in the vehicle's file too. */
export function takeUp(state: State, form: StartForm, { library }: Offered): Transition {
  const facts = factsTold(form, library);
  const action = taking(state, form, { facts, sheet: { ...typedSheet(form) } });
  const taken = takeAction(state, action);
  const acted = afterAction(taken);
  const { session } = acted.state;
  if (taken.outcome.kind === 'refused' || session === undefined) return acted;
  const { name } = session.header.vehicle;
  const kept = state.vehicles.find(({ vehicle }) => sameVehicle(vehicle.name, name));
  const news = Object.keys({ ...facts, ...typedSheet(form) }).length > 0;
  if (kept === undefined || !news) return acted;
  const { path } = kept;
  const vehicle = afterStart(kept.vehicle, session.story);
  return transition(acted.state, ...acted.effects, { kind: 'keep-vehicle', path, vehicle });
}

type Told = Pick<Extract<Action, { do: 'leg' }>, 'facts' | 'sheet'>;

/** What is taken up: a tree that this one leads to, another complaint, or one in own words. */
function taking({ session }: State, form: StartForm, told: Told): Action {
  const { tree = '', said = '', own = '' } = form.answers;
  const due = session?.story.due;
  if (form.begins === 'leg')
    return { do: 'leg', tree, ...(due?.kind === 'leg' && { reason: due.reason }), ...told };
  return tree === somethingElse
    ? { do: 'own-leg', say: own, ...aboutOf(form) }
    : { do: 'complaint', tree, words: said, ...told };
}

/** The group that was chosen for a complaint in own words. */
function aboutOf({ answers }: StartForm): { readonly about?: Group } {
  const about = groupNamed(answers['about']);
  return about === undefined ? {} : { about };
}

const factsTold = ({ answers }: StartForm, { shop }: Library): Record<string, string> =>
  Object.fromEntries(
    Object.entries(answers).filter(
      ([id, value]) => Object.hasOwn(shop.facts, id) && value !== notKnown,
    ),
  );

/** The first line of the job that the answers begin. */
export function headerFrom(state: State, form: StartForm, library: Library): Parsed<Header> {
  const { answers } = form;
  const tree =
    answers['tree'] === somethingElse
      ? bareTree(answers['own'] ?? '', groupNamed(answers['about']))
      : library.trees.find(({ id }) => id === answers['tree']);
  if (tree === undefined)
    return bad({ code: 'no-tree', message: 'No complaint is chosen.', mend: 'Choose one.' });
  const vehicle = chosenVehicle(form, state.vehicles) ?? newVehicle(answers['vehicle'] ?? '');
  const conditions = parseConditions(answers, state.settings.units);
  if (conditions.kind === 'bad') return conditions;
  const facts = factsTold(form, library);
  const sheet = parseSheet(typedSheet(form), tree, library.shop);
  if (sheet.kind === 'bad') return sheet;
  const said = (answers['said'] ?? '').trim();
  return good(
    newHeader(
      {
        tree,
        shop: library.shop,
        vehicle: forJob(vehicle, { facts, sheet: sheet.value }),
        who: (answers['who'] ?? '').trim(),
        ...(said !== '' && { said }),
        conditions: conditions.value,
        units: state.settings.units,
        ...currencyOf(state.settings),
      },
      state.now.at,
    ),
  );
}
