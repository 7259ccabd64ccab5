import { join } from 'node:path';
import type { Files } from './files.ts';

/** What a person chooses once. Units are for typing and showing; files keep what was typed. */
export type Settings = {
  readonly units: 'us' | 'metric';
  /** Height of the usual place of work, as typed with its unit; empty when not set. */
  readonly altitude: string;
  readonly who: string;
  /** Folder for new sessions; empty means `sessions` in the current folder. */
  readonly sessions: string;
  readonly theme: 'day' | 'night';
};

export const defaultSettings: Settings = {
  units: 'us',
  altitude: '',
  who: '',
  sessions: '',
  theme: 'day',
};

const fileName = 'settings';
const path = (folder: string): string => join(folder, `${fileName}.json`);

/**
 * Reads the settings without loading the library that writes them: it would take a fifth of the
 * time to the first frame. A torn or strange file counts as not there, value by value.
 */
export function readSettings(files: Files, folder: string): Settings {
  if (!files.exists(path(folder))) return defaultSettings;
  try {
    const found: unknown = JSON.parse(new TextDecoder().decode(files.read(path(folder))));
    return sensible(typeof found === 'object' && found !== null ? { ...found } : {});
  } catch {
    // A settings file that cannot be read must never keep a mechanic from the work.
    return defaultSettings;
  }
}

function sensible(found: Readonly<Record<string, unknown>>): Settings {
  const text = (key: keyof Settings, otherwise: string): string => {
    const value = Object.hasOwn(found, key) ? found[key] : undefined;
    return typeof value === 'string' && value.length <= 500 ? value : otherwise;
  };
  return {
    units: text('units', '') === 'metric' ? 'metric' : 'us',
    theme: text('theme', '') === 'night' ? 'night' : 'day',
    altitude: text('altitude', defaultSettings.altitude),
    who: text('who', defaultSettings.who),
    sessions: text('sessions', defaultSettings.sessions),
  };
}

/** Writes the settings whole, through a temporary file; the library for it is loaded here first. */
export async function writeSettings(folder: string, settings: Settings): Promise<void> {
  const { default: Conf } = await import('conf');
  const conf = new Conf<Settings>({
    cwd: folder,
    configName: fileName,
    clearInvalidConfig: true,
    projectName: 'droplight',
  });
  conf.store = settings;
}

/** Where settings live on each system, by its own custom; `DROPLIGHT_SETTINGS` overrides it. */
export function settingsFolder(
  env: Readonly<Record<string, string | undefined>>,
  system: string,
  home: string,
): string {
  if (env['DROPLIGHT_SETTINGS']) return env['DROPLIGHT_SETTINGS'];
  if (system === 'win32')
    return join(env['APPDATA'] ?? join(home, 'AppData', 'Roaming'), 'droplight');
  if (system === 'darwin') return join(home, 'Library', 'Preferences', 'droplight');
  return join(env['XDG_CONFIG_HOME'] ?? join(home, '.config'), 'droplight');
}
