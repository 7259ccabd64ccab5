import { describe, expect, test } from 'vitest';
import { cacheFolder, settingsFolder, usualSessions } from '../../src/store/places.ts';

describe('where settings live', () => {
  test.each([
    ['linux', {}, '/home/jb/.config/droplight'],
    ['linux', { XDG_CONFIG_HOME: '/cfg' }, '/cfg/droplight'],
    ['linux', { XDG_CONFIG_HOME: '' }, '/home/jb/.config/droplight'],
    ['linux', { XDG_CONFIG_HOME: 'cfg' }, '/home/jb/.config/droplight'],
    ['darwin', {}, '/home/jb/Library/Application Support/droplight'],
    ['linux', { DROPLIGHT_SETTINGS: '/mine' }, '/mine'],
    ['linux', { DROPLIGHT_SETTINGS: '' }, '/home/jb/.config/droplight'],
  ] as const)('on %s with %o: %s', (system, env, expected) => {
    expect(settingsFolder({ env, system, home: '/home/jb' })).toBe(expected);
  });

  test.each([
    [{ APPDATA: 'D:\\roam' }, 'D:\\roam\\droplight'],
    [{}, 'C:\\Users\\jb\\AppData\\Roaming\\droplight'],
  ])('on win32 with %o: %s', (env, expected) => {
    expect(settingsFolder({ env, system: 'win32', home: 'C:\\Users\\jb' })).toBe(expected);
  });
});

describe('where sessions are kept when nobody says', () => {
  const installed = '/usr/lib/node_modules/droplight';

  test.each([
    ['linux', {}, '/home/jb/.local/share/droplight/sessions'],
    ['linux', { XDG_DATA_HOME: '/data' }, '/data/droplight/sessions'],
    ['linux', { XDG_DATA_HOME: 'data' }, '/home/jb/.local/share/droplight/sessions'],
    ['darwin', {}, '/home/jb/Library/Application Support/droplight/sessions'],
  ] as const)('installed on %s with %o: %s', (system, env, expected) => {
    expect(usualSessions({ env, system, home: '/home/jb' }, installed, '/shop')).toBe(expected);
  });

  test.each([
    [{ LOCALAPPDATA: 'D:\\local' }, 'D:\\local\\droplight\\sessions'],
    [{}, 'C:\\Users\\jb\\AppData\\Local\\droplight\\sessions'],
  ])('installed on win32 with %o: %s', (env, expected) => {
    const root = 'C:\\npm\\node_modules\\droplight';

    expect(usualSessions({ env, system: 'win32', home: 'C:\\Users\\jb' }, root, 'C:\\shop')).toBe(
      expected,
    );
  });

  test.each([
    ['linux', '/src/droplight', '/shop', '/shop/sessions'],
    ['win32', 'C:\\src\\droplight', 'C:\\shop', 'C:\\shop\\sessions'],
  ])('in a clone on %s: in the current folder', (system, root, current, expected) => {
    expect(usualSessions({ env: {}, system, home: '/home/jb' }, root, current)).toBe(expected);
  });
});

describe('where the program keeps what it can make anew', () => {
  test.each([
    ['linux', {}, '/home/jb/.cache/droplight'],
    ['linux', { XDG_CACHE_HOME: '/fast' }, '/fast/droplight'],
    ['linux', { XDG_CACHE_HOME: 'fast' }, '/home/jb/.cache/droplight'],
    ['darwin', {}, '/home/jb/Library/Caches/droplight'],
  ] as const)('on %s with %o: %s', (system, env, expected) => {
    expect(cacheFolder({ env, system, home: '/home/jb' })).toBe(expected);
  });

  test('on win32 beside the data that stay on this machine', () => {
    const env = { LOCALAPPDATA: 'D:\\local' };

    expect(cacheFolder({ env, system: 'win32', home: 'C:\\Users\\jb' })).toBe(
      'D:\\local\\droplight\\Cache',
    );
  });
});
