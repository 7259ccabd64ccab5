import { join } from 'node:path';
import { bad, good, problemsOf, type Parsed, type Problem } from '../core/problem.ts';
import { defaultSettings, parseSettings, type Settings } from '../core/settings.ts';
import type { Files } from './files.ts';

const fileName = 'settings';
const path = (folder: string): string => join(folder, `${fileName}.json`);

/**
 * Reads the settings without loading the library that writes them: it would take a fifth of the
 * time to the first frame. A strange value counts as not there, one by one, a torn file as a whole.
 */
export function readSettings(files: Files, folder: string): Settings {
  const value = valueIn(files, folder);
  return value.kind === 'good' ? parseSettings(value.value) : defaultSettings;
}

/** What is wrong with the file of the settings, where it cannot be read. */
export const settingsTrouble = (files: Files, folder: string): Problem | undefined =>
  problemsOf(valueIn(files, folder))[0];

/** What the file holds; nothing where there is none. It must never keep a mechanic from the work. */
function valueIn(files: Files, folder: string): Parsed<unknown> {
  if (!files.exists(path(folder))) return good({});
  try {
    return good(JSON.parse(new TextDecoder().decode(files.read(path(folder)))));
  } catch {
    return bad({
      code: 'settings-unreadable',
      message: `The settings cannot be read (${path(folder)}); the usual ones hold.`,
      mend: 'The next change keeps the old file beside it, under a name that ends in .unread.',
    });
  }
}

/** Writes the settings whole, through a temporary file; the library for it is loaded here first. */
export async function writeSettings(
  files: Files,
  folder: string,
  settings: Settings,
): Promise<void> {
  const { default: Conf } = await import('conf');
  if (valueIn(files, folder).kind === 'bad') files.rename(path(folder), `${path(folder)}.unread`);
  const conf = new Conf<Settings>({
    cwd: folder,
    configName: fileName,
    clearInvalidConfig: true,
    projectName: 'droplight',
  });
  conf.store = settings;
}
