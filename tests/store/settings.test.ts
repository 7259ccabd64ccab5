import { mkdtempSync, readFileSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { defaultSettings, type Settings } from '../../src/core/settings.ts';
import { nodeFiles } from '../../src/store/node-files.ts';
import { readSettings, settingsTrouble, writeSettings } from '../../src/store/settings.ts';
import { MemoryFiles } from '../helpers/memory-files.ts';

const mine: Settings = {
  units: 'metric',
  altitude: '1600m',
  who: 'JB',
  currency: 'EUR',
  bell: 'off',
  sessions: '/jobs',
  theme: 'night',
  lead: 'quicker',
  hour: 'double',
  sure: '95',
  ownJobs: 'on',
};
const read = (text: string) => readSettings(new MemoryFiles({ 'set/settings.json': text }), 'set');

describe('reading settings', () => {
  test('that were never written gives the defaults', () => {
    expect(readSettings(new MemoryFiles(), 'set')).toEqual(defaultSettings);
  });

  test('gives what was written', () => {
    expect(read(JSON.stringify(mine))).toEqual(mine);
  });

  test('from a file torn at any byte gives the defaults, and never a throw', () => {
    const whole = JSON.stringify(mine);
    const torn = Array.from(whole, (_, cut) => read(whole.slice(0, cut)));

    expect(torn).toEqual(torn.map(() => defaultSettings));
  });

  test.each([
    ['units', 'cubits'],
    ['units', 7],
    ['altitude', 1600],
    ['who', null],
    ['who', 'x'.repeat(501)],
    ['sessions', ['/jobs']],
    ['theme', 'dusk'],
    ['lead', 'both'],
  ])('with a strange %s keeps the others (%#)', (key, value) => {
    const name = key as keyof Settings;

    expect(read(JSON.stringify({ ...mine, [key]: value }))).toEqual({
      ...mine,
      [name]: defaultSettings[name],
    });
  });

  test.each(['null', '7', '"text"', '[]', '\0\0\0\0', '{"__proto__":{"who":"x"}}'])(
    'from %s gives the defaults',
    (text) => {
      expect(read(text)).toEqual(defaultSettings);
    },
  );

  test('that the system refuses to read gives the defaults', () => {
    const files = new MemoryFiles({ 'set/settings.json': JSON.stringify(mine) });
    files.refuse = () => 'EACCES';

    expect(readSettings(files, 'set')).toEqual(defaultSettings);
  });
});

describe('writing settings', () => {
  let folder = '';
  beforeEach(() => {
    folder = mkdtempSync(join(tmpdir(), 'droplight-settings-'));
  });
  afterEach(() => rmSync(folder, { recursive: true }));

  test('they are read back, and nothing else stays in the folder', async () => {
    await writeSettings(nodeFiles, folder, mine);

    expect(readSettings(nodeFiles, folder)).toEqual(mine);
    expect(readdirSync(folder)).toEqual(['settings.json']);
  });

  test('a torn file is told, and kept aside when the settings are written anew', async () => {
    writeFileSync(join(folder, 'settings.json'), '{"units":"me');
    expect(settingsTrouble(nodeFiles, folder)?.message).toContain(join(folder, 'settings.json'));
    await writeSettings(nodeFiles, folder, mine);

    expect(readSettings(nodeFiles, folder)).toEqual(mine);
    expect(settingsTrouble(nodeFiles, folder)).toBeUndefined();
    expect(readFileSync(join(folder, 'settings.json.unread'), 'utf8')).toBe('{"units":"me');
  });
});
