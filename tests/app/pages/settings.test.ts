import { expect, test } from 'vitest';
import { nodeFiles } from '../../../src/store/node-files.ts';
import { readSettings } from '../../../src/store/settings.ts';
import { makeProgram, press } from '../../helpers/program.ts';

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

  press(made.program, '1someone<esc>');

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
