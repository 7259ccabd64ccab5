import { firstOf } from '../../core/problem.ts';
import { parseConditions } from '../../core/session/rules/vehicle.ts';
import { hourWorths, sureties, type Settings } from '../../core/settings.ts';
import { moved, picked, typedOn } from '../keys/cursor.ts';
import { object, show, type Transition, transition } from '../effect.ts';
import type { KeyPress } from '../keys/command.ts';
import type { Page } from '../page.ts';
import { home, type At } from '../screen.ts';
import type { State } from '../state.ts';

/** The settings in the order of the screen; those with values turn, the others are typed. */
export const settingLines = [
  { key: 'who', label: 'Who is working' },
  { key: 'altitude', label: 'Altitude of the workplace' },
  { key: 'units', label: 'Units when typing', values: ['us', 'metric'] },
  {
    key: 'lead',
    label: 'Walk leads by (tree: its own way; quicker: the advice)',
    values: ['tree', 'quicker'],
  },
  {
    key: 'hour',
    label: 'An hour of work is worth (against the price of parts)',
    values: hourWorths,
  },
  { key: 'sure', label: 'Sure enough for a repair, percent', values: sureties },
  { key: 'theme', label: 'Theme', values: ['day', 'night'] },
  { key: 'sessions', label: 'Sessions folder' },
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
  if (!('values' in line)) return show(state, { ...at, typed: state.settings[line.key] });
  const values: readonly string[] = line.values;
  const value = values[(values.indexOf(state.settings[line.key]) + 1) % values.length];
  return save(state, at, { [line.key]: value });
}

function updateTyped(
  state: State,
  screen: At<'settings'>,
  typed: string,
  press: KeyPress,
): Transition {
  const line = settingLines[screen.cursor];
  if (press.command === 'leave-field' || line === undefined)
    return show(state, { kind: 'settings', cursor: screen.cursor });
  if (press.command === 'type' || press.command === 'erase')
    return show(state, { ...screen, typed: typedOn(typed, press) });
  if (press.command !== 'choose') return transition(state);
  const altitude =
    line.key === 'altitude'
      ? parseConditions({ altitude: typed }, state.settings.units)
      : undefined;
  if (altitude?.kind === 'bad') return object(state, firstOf(altitude.problems));
  return save(state, screen, { [line.key]: typed.trim() });
}

function save(state: State, screen: At<'settings'>, change: Partial<Settings>): Transition {
  const settings = { ...state.settings, ...change };
  return transition(
    { ...state, settings, screen: { kind: 'settings', cursor: screen.cursor } },
    { kind: 'save-settings', settings },
  );
}
