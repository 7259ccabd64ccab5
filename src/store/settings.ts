import { join } from 'node:path';
import { defaultSettings, parseSettings, type Settings } from '../core/settings.ts';
import type { Files } from './files.ts';

const fileName = 'settings';
const path = (folder: string): string => join(folder, `${fileName}.json`);

/**
 * Reads the settings without loading the library that writes them: it would take a fifth of the
 * time to the first frame. A torn or strange file counts as not there, value by value.
 */
export function readSettings(files: Files, folder: string): Settings {
  if (!files.exists(path(folder))) return defaultSettings;
  try {
    return parseSettings(JSON.parse(new TextDecoder().decode(files.read(path(folder)))));
  } catch {
    // A settings file that cannot be read must never keep a mechanic from the work.
    return defaultSettings;
  }
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
