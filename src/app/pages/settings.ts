import { parseConditions } from '../../core/session/rules/vehicle.ts';
import type { Settings } from '../../core/settings.ts';
import { problemNotice } from '../take-action.ts';
import { moved, picked, typedOn } from '../keys/cursor.ts';
import { type Transition, transition } from '../effect.ts';
import type { KeyPress } from '../keys/press.ts';
import { home, type Screen } from '../screen.ts';
import { settingLines } from './setting-lines.ts';
import type { State } from '../state.ts';

type At = Extract<Screen, { kind: 'settings' }>;

export function updateSettings(state: State, screen: At, press: KeyPress): Transition {
  if (screen.typed !== undefined) return updateTyped(state, screen, screen.typed, press);
  if (press.command === 'go-back') return transition({ ...state, screen: home });
  const index = picked(screen.cursor, press, settingLines.length);
  const line = index === undefined ? undefined : settingLines[index];
  if (line === undefined || index === undefined) {
    const cursor = moved(screen.cursor, press.command, settingLines.length);
    return transition({ ...state, screen: { kind: 'settings', cursor } });
  }
  const at: At = { kind: 'settings', cursor: index };
  if (!('values' in line))
    return transition({ ...state, screen: { ...at, typed: state.settings[line.key] } });
  const values: readonly string[] = line.values;
  const value = values[(values.indexOf(state.settings[line.key]) + 1) % values.length];
  return save(state, at, { [line.key]: value });
}

function updateTyped(state: State, screen: At, typed: string, press: KeyPress): Transition {
  const line = settingLines[screen.cursor];
  if (press.command === 'leave-field' || line === undefined)
    return transition({ ...state, screen: { kind: 'settings', cursor: screen.cursor } });
  if (press.command === 'type' || press.command === 'erase')
    return transition({ ...state, screen: { ...screen, typed: typedOn(typed, press) } });
  if (press.command !== 'choose') return transition(state);
  const altitude =
    line.key === 'altitude'
      ? parseConditions({ altitude: typed }, state.settings.units)
      : undefined;
  if (altitude?.kind === 'bad')
    return transition({
      ...state,
      notice: altitude.problems[0] && problemNotice(altitude.problems[0]),
    });
  return save(state, screen, { [line.key]: typed.trim() });
}

function save(state: State, screen: At, change: Partial<Settings>): Transition {
  const settings = { ...state.settings, ...change };
  return transition(
    { ...state, settings, screen: { kind: 'settings', cursor: screen.cursor } },
    { kind: 'save-settings', settings },
  );
}
