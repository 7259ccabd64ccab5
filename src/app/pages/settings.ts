import { firstOf } from '../../core/problem.ts';
import { parseConditions } from '../../core/session/rules/vehicle.ts';
import { parseCurrency } from '../../core/trade/money/money.ts';
import { hourWorths, sureties, withUnit, type Settings } from '../../core/settings.ts';
import { moved, picked } from '../keys/cursor.ts';
import { textOf, typing, type Typing } from '../typing/typing.ts';
import { edited, edits } from '../typing/edit.ts';
import { object, show, type Transition, transition } from '../effect.ts';
import type { KeyPress } from '../keys/command.ts';
import type { Page } from '../page.ts';
import { home, type At } from '../screen.ts';
import type { State } from '../state.ts';

/** The settings in the order of the screen; those with values turn, the others are typed. */
export const settingLines = [
  {
    key: 'who',
    label: 'Who is working',
    about: 'Stands on new jobs, in their accounts for a mentor and in reviews.',
  },
  {
    key: 'altitude',
    label: 'Altitude of the workplace',
    about: 'Offered to new jobs: vacuum, compression and boiling are judged by it.',
  },
  {
    key: 'units',
    label: 'Units',
    values: ['us', 'metric'],
    about: 'For heights, temperatures and figures typed without a unit; a check names its own.',
  },
  {
    key: 'lead',
    label: 'The walk is led by',
    values: ['tree', 'quicker'],
    about: "tree: the tree's own way. quicker: the step with the fewest minutes to expect.",
  },
  {
    key: 'hour',
    label: 'An hour of work is worth',
    values: hourWorths,
    about: 'Against the price of parts: with double, a part is bought after fewer checks.',
  },
  {
    key: 'sure',
    label: 'Sure enough for a repair, percent',
    values: sureties,
    about: 'Below it no repair is advised while a short check could still tell.',
  },
  {
    key: 'theme',
    label: 'Colors',
    values: ['day', 'night'],
    about: 'day: for a bright place, on a light or dark screen. night: for a dark screen only.',
  },
  {
    key: 'sessions',
    label: 'Sessions folder',
    about: 'Where jobs are kept; empty: the folder "sessions" where Droplight is started.',
  },
  {
    key: 'currency',
    label: 'Currency',
    about: 'Of prices typed without one, on new jobs: a code such as EUR, or a sign such as $.',
  },
  {
    key: 'bell',
    label: 'Bell',
    values: ['on', 'off'],
    about: 'Whether the terminal rings when a timer has run out.',
  },
  {
    key: 'ownJobs',
    label: 'Own history',
    values: ['off', 'on'],
    about: 'on: odds and minutes of new jobs move gently to what your own jobs were proven to be.',
  },
] as const;

export const settingsPage: Page<'settings'> = {
  mode: ({ typed }) => (typed === undefined ? 'settings' : 'text'),
  update: updateSettings,
  open: openSettings,
};

export function openSettings(state: State): Transition {
  return show(state, { kind: 'settings', cursor: 0 });
}

function updateSettings(state: State, screen: At<'settings'>, press: KeyPress): Transition {
  if (screen.typed !== undefined) return updateTyped(state, screen, screen.typed, press);
  if (press.command === 'go-back') return show(state, home);
  const line = picked(screen.cursor, press, settingLines);
  if (line === undefined) {
    const cursor = moved(screen.cursor, press.command, settingLines.length);
    return show(state, { kind: 'settings', cursor });
  }
  const at: At<'settings'> = { kind: 'settings', cursor: settingLines.indexOf(line) };
  if (!('values' in line)) return show(state, { ...at, typed: typing(state.settings[line.key]) });
  const values: readonly string[] = line.values;
  const value = values[(values.indexOf(state.settings[line.key]) + 1) % values.length];
  return save(state, at, { [line.key]: value });
}

function updateTyped(
  state: State,
  screen: At<'settings'>,
  typed: Typing,
  press: KeyPress,
): Transition {
  const line = settingLines[screen.cursor];
  if (press.command === 'leave-field' || line === undefined)
    return show(state, { kind: 'settings', cursor: screen.cursor });
  if (edits(press.command)) return show(state, { ...screen, typed: edited(typed, press) });
  if (press.command !== 'choose') return transition(state);
  return keepTyped(state, screen, line.key, textOf(typed).trim());
}

/** Keeps what was typed: a height with its unit, a folder once the disk has been asked for it. */
function keepTyped(
  state: State,
  screen: At<'settings'>,
  key: (typeof settingLines)[number]['key'],
  typed: string,
): Transition {
  if (key === 'sessions') return transition(state, { kind: 'choose-folder', typed });
  if (key === 'currency') return keepCurrency(state, screen, typed);
  if (key !== 'altitude') return save(state, screen, { [key]: typed });
  const { units } = state.settings;
  const altitude = parseConditions({ altitude: typed }, units);
  if (altitude.kind === 'bad') return object(state, firstOf(altitude.problems));
  return save(state, screen, { altitude: withUnit(typed, units === 'metric' ? 'm' : 'ft') });
}

function keepCurrency(state: State, screen: At<'settings'>, typed: string): Transition {
  const currency = parseCurrency(typed);
  return currency === undefined
    ? object(state, {
        message: `"${typed}" is no currency that is known:`,
        mend: 'type its code, such as EUR, or its sign.',
      })
    : save(state, screen, { currency });
}

/** The folder that was asked for is there or can be made: new sessions go there from now on. */
export function folderChosen(state: State, path: string): Transition {
  const screen: At<'settings'> = { kind: 'settings', cursor: folderLine };
  const { state: kept, effects } = save(state, screen, { sessions: path });
  return transition(kept, ...effects, { kind: 'list-sessions' });
}

const folderLine = settingLines.findIndex(({ key }) => key === 'sessions');

function save(state: State, screen: At<'settings'>, change: Partial<Settings>): Transition {
  const settings = { ...state.settings, ...change };
  // Trees are read anew by the setting that holds now.
  const anew = change.ownJobs !== undefined;
  const library = anew ? undefined : state.library;
  return transition(
    { ...state, library, settings, screen: { kind: 'settings', cursor: screen.cursor } },
    { kind: 'save-settings', settings },
    ...(anew ? [{ kind: 'load-library' as const }] : []),
  );
}
