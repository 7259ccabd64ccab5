import { readdirSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { settingLines } from '../../../src/app/pages/settings.ts';
import { parseSettings } from '../../../src/core/settings.ts';
import { nodeFiles } from '../../../src/store/node-files.ts';
import { readSettings } from '../../../src/store/settings.ts';
import { makeProgram, press, startKeys } from '../../helpers/program.ts';

/** The settings screen, with the keys that choose a line of it. */
function onSettings() {
  const made = makeProgram();
  press(made.program, 'g');
  return made;
}

const keptOf = ({ folder }: ReturnType<typeof makeProgram>) =>
  readSettings(nodeFiles, `${folder}/settings`);

test.each([
  ['3', 'units', ['metric', 'us']],
  ['4', 'lead', ['quicker', 'tree']],
  ['5', 'hour', ['double', 'half', 'usual']],
  ['6', 'sure', ['90', '95', '70', '80']],
  ['7', 'theme', ['night', 'day']],
] as const)('line %s turns %s, and it is kept', async (key, name, values) => {
  const made = onSettings();

  for (const value of values) {
    press(made.program, key);
    expect(made.program.state().settings[name]).toBe(value);
    await expect.poll(() => keptOf(made)[name]).toBe(value);
    await expect.poll(() => made.program.state().notice?.text).toBe('Settings kept.');
  }
  expect(made.program.state().screen).toMatchObject({ kind: 'settings', cursor: Number(key) - 1 });
});

test('a name is typed, b and q among its letters, and stands on the next job', async () => {
  const made = onSettings();

  press(made.program, '1bq<back>r<enter>');
  expect(made.program.state().settings.who).toBe('br');
  await expect.poll(() => keptOf(made).who).toBe('br');
  press(made.program, '<esc>s');

  const { screen } = made.program.state();
  expect(screen).toMatchObject({ kind: 'start', form: { answers: { who: 'br' } } });
});

test('escape leaves a field as it was', () => {
  const made = onSettings();

  press(made.program, '1someone<esc>y');

  expect(made.program.state().settings.who).toBe('');
  expect(made.program.state().question.mode).toBe('settings');
});

test('an altitude that cannot be is refused, and can be mended', () => {
  const made = onSettings();

  press(made.program, '2high<enter>');
  expect(made.program.state().notice?.kind).toBe('problem');
  expect(made.program.state().settings.altitude).toBe('');
  press(made.program, `${'<back>'.repeat(4)}5200ft<enter>`);

  expect(made.program.state().settings.altitude).toBe('5200ft');
});

test('the arrows and Enter do what the number does; back is Home', () => {
  const made = onSettings();

  press(made.program, '<down><down><enter>');
  expect(made.program.state().settings.units).toBe('metric');
  press(made.program, 'b');

  expect(made.program.state().screen.kind).toBe('home');
});

test('a height keeps the unit it was typed in, however the units turn and the program restarts', async () => {
  for (const [turns, typed, kept] of [
    ['', '5200', '5200 ft'],
    ['3', '1600', '1600 m'],
    ['', '5200ft', '5200ft'],
    ['3', '5200 ft', '5200 ft'],
  ] as const) {
    const made = onSettings();
    press(made.program, `${turns}2${typed}<enter>`);
    expect(made.program.state().settings.altitude).toBe(kept);
    press(made.program, '33');
    press(made.program, '3');
    expect(made.program.state().settings.altitude).toBe(kept);
    await expect.poll(() => keptOf(made).altitude).toBe(kept);
  }
});

test('a bare height of an older file means what its units meant', () => {
  expect(parseSettings({ altitude: '5200', units: 'us' }).altitude).toBe('5200 ft');
  expect(parseSettings({ altitude: '1,600', units: 'metric' }).altitude).toBe('1,600 m');
  expect(parseSettings({ altitude: '', units: 'metric' }).altitude).toBe('');
  expect(parseSettings({ altitude: '5200 ft', units: 'metric' }).altitude).toBe('5200 ft');
});

test.each([
  ['~/my jobs', ({ folder }: { folder: string }) => join(folder, 'home', 'my jobs')],
  ['jobs/old', ({ folder }: { folder: string }) => join(folder, 'jobs', 'old')],
])('the folder %s is one place, made and live at once', async (typed, place) => {
  const made = onSettings();
  press(made.program, `8${typed}<enter>`);

  expect(made.program.state().settings.sessions).toBe(place(made));
  expect(statSync(place(made)).isDirectory()).toBe(true);
  await expect.poll(() => keptOf(made).sessions).toBe(place(made));
  press(made.program, `<esc>${startKeys()}`);
  expect(readdirSync(place(made)).filter((name) => name.endsWith('.jsonl'))).toHaveLength(1);
});

test('a folder that cannot be is refused with its path, and the field stays', () => {
  const made = onSettings();
  writeFileSync(join(made.folder, 'notes'), 'a file');
  press(made.program, '8notes/jobs<enter>');

  const { notice, settings, screen } = made.program.state();
  expect(notice).toMatchObject({ kind: 'problem' });
  expect(notice?.text).toContain(join(made.folder, 'notes', 'jobs'));
  expect(settings.sessions).toBe('');
  expect(screen).toMatchObject({ kind: 'settings', typed: { before: 'notes/jobs', after: '' } });
});

test('every setting tells what it does', () => {
  for (const { about } of settingLines) expect(about).toMatch(/^\S.{20,}\.$/);
});
