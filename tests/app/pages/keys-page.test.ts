import { expect, test } from 'vitest';
import type { Program } from '../../../src/app/program.ts';
import type { Command } from '../../../src/app/keys/command.ts';
import { isField } from '../../../src/app/keys/field.ts';
import { hints } from '../../../src/app/keys/keymap.ts';
import { bindings, pages } from '../../../src/app/pages/table.ts';
import { everyScreen, moreScreens, type Reached } from '../../helpers/every-screen.ts';
import { makeProgram, passPages, press, startKeys } from '../../helpers/program.ts';

const ready = `${startKeys()}y`;

/** The key that opens a screen, whatever letter it is now. */
const keyTo = (command: Command): string =>
  bindings.find((one) => one.command === command)?.keys[0] ?? '';

const byKeys = (name: string, keys: string): Reached => ({
  name,
  reach: () => {
    const { program } = makeProgram();
    press(program, keys);
    return program;
  },
});

/** After a cause was condemned and repaired, with something typed of what was done. */
function whatWasDone(): Program {
  const { program } = makeProgram();
  press(program, `${ready}2r2`);
  passPages(program);
  press(program, 'Zy<enter>');
  passPages(program);
  press(program, 'Zyhose cut back<enter>40');
  return program;
}

/** Screens with words in a field, and those that the frames have no picture of. */
const others: readonly Reached[] = [
  byKeys('a setting that is typed', 'g2<back>5200 ft'),
  byKeys('the name of a vehicle', 's1<enter>Orchard v'),
  byKeys('a narrowed question', 'sbrak'),
  byKeys('a narrowed list of figures', 'fvolt'),
  byKeys('an input of a figure', 'fdwell<enter>8<enter>55'),
  byKeys('the history', `${ready}2${keyTo('history')}`),
  byKeys('who works', `${ready}2W`),
  byKeys('another complaint', `${ready}2C`),
  byKeys('what was found', `${ready}2r21yvalve sits`),
  { name: 'what was done', reach: whatWasDone },
  byKeys('a reason', `${ready}2xno time`),
  byKeys('a part taken off', `${ready}2pair filter`),
  byKeys('a closed job to open again', `${ready}2c3yc`),
];

/** The code of the phone takes the whole window and tells its keys beside it; its address dies when it is left. */
const without: readonly string[] = ['keys', 'phone'];
const all = [...everyScreen, ...moreScreens, ...others].filter(
  ({ name }) => !without.includes(name),
);

/** `?` is typed where words are: there it is Ctrl+G. */
const keyOf = ({ question: { mode } }: ReturnType<Program['state']>): string =>
  isField(mode) ? '<C-g>' : '?';

test('screens of every kind are opened here', () => {
  const kinds = new Set([...all, ...everyScreen].map(({ reach }) => reach().state().screen.kind));

  expect(Object.keys(pages).filter((kind) => kind !== 'keys' && !kinds.has(kind as never))).toEqual(
    [],
  );
});

test.each(all)('$name: its page of keys opens and leads back, with nothing lost', ({ reach }) => {
  const program = reach();
  const before = program.state();
  const { mode } = before.question;

  press(program, keyOf(before));
  const opened = program.state().screen;
  press(program, '<esc>');
  const after = program.state();

  expect(hints(bindings, mode)).toContainEqual({
    key: isField(mode) ? 'C-g' : '?',
    hint: 'keys',
  });
  expect(opened.kind === 'keys' && opened.lines.length).toBeGreaterThan(3);
  const still =
    before.screen.kind === 'replay' ? { ...before.screen, playing: false } : before.screen;
  expect(after.screen).toEqual(still);
  expect(after.question.mode).toBe(mode);
  expect(after.session?.events.length).toBe(before.session?.events.length);
  expect(after.drafts).toEqual(before.drafts);
});

test('in a field a question mark is a question mark', () => {
  const { program } = makeProgram();

  press(program, 's1<enter>Van?');

  expect(program.state().screen).toMatchObject({ form: { typed: { before: 'Van?' } } });
});
