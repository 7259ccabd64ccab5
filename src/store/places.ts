import { posix, win32 } from 'node:path';

/** The system and the person that the program runs for. */
export type Host = {
  readonly env: Readonly<Record<string, string | undefined>>;
  /** As Node names it: `linux`, `darwin`, `win32` ... */
  readonly system: string;
  readonly home: string;
};

/** Where settings live on each system, by its own custom; `DROPLIGHT_SETTINGS` overrides it. */
export function settingsFolder({ env, system, home }: Host): string {
  if (env['DROPLIGHT_SETTINGS']) return env['DROPLIGHT_SETTINGS'];
  if (system === 'win32') return onWindows(env['APPDATA'], home, 'Roaming');
  if (system === 'darwin') return onMac(home);
  return posix.join(absoluteOr(env['XDG_CONFIG_HOME'], posix.join(home, '.config')), 'droplight');
}

/**
 * Where sessions are kept when nobody says another folder: `sessions` in the current folder of a
 * clone; where the program is installed, the place that each system has for a person's data.
 * @param root the folder that holds `.build` and `trees`
 */
export function usualSessions(host: Host, root: string, current: string): string {
  const path = host.system === 'win32' ? win32 : posix;
  const isInstalled = path.basename(path.dirname(root)) === 'node_modules';
  return path.join(isInstalled ? dataFolder(host) : current, 'sessions');
}

function dataFolder({ env, system, home }: Host): string {
  if (system === 'win32') return onWindows(env['LOCALAPPDATA'], home, 'Local');
  if (system === 'darwin') return onMac(home);
  const usual = posix.join(home, '.local', 'share');
  return posix.join(absoluteOr(env['XDG_DATA_HOME'], usual), 'droplight');
}

/** Where a program may keep what it can make anew: here its own text, read and understood. */
export function cacheFolder({ env, system, home }: Host): string {
  if (system === 'win32') return win32.join(onWindows(env['LOCALAPPDATA'], home, 'Local'), 'Cache');
  if (system === 'darwin') return posix.join(home, 'Library', 'Caches', 'droplight');
  return posix.join(absoluteOr(env['XDG_CACHE_HOME'], posix.join(home, '.cache')), 'droplight');
}

const onWindows = (named: string | undefined, home: string, kind: 'Roaming' | 'Local'): string =>
  win32.join(named ? named : win32.join(home, 'AppData', kind), 'droplight');

const onMac = (home: string): string =>
  posix.join(home, 'Library', 'Application Support', 'droplight');

/** XDG Base Directory Specification 0.8 (from memory): an empty or relative path counts as not set. */
const absoluteOr = (named: string | undefined, usual: string): string =>
  named !== undefined && posix.isAbsolute(named) ? named : usual;
