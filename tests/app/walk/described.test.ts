import { expect, test } from 'vitest';
import { makeProgram, passPages, press, startKeys } from '../../helpers/program.ts';

/** A program that stands at the page of a cause, its cautions read. */
function atNamed() {
  const { program } = makeProgram();
  press(program, `${startKeys()}y2r2`);
  passPages(program);
  expect(program.state().question.mode).toBe('named');
  return program;
}
type Program = ReturnType<typeof atNamed>;

const last = (program: Program) => program.state().session?.events.at(-1);

function atMended() {
  const program = atNamed();
  press(program, 'Zy<enter>');
  passPages(program);
  press(program, 'Zy');
  return program;
}

test('after "this is it" a field asks what exactly was found, in own words', () => {
  const program = atNamed();

  press(program, 'Zy');
  expect(last(program)).toMatchObject({ kind: 'condemned' });
  press(program, 'hose split under the clamp<enter>');

  expect(last(program)).toMatchObject({ kind: 'described', found: 'hose split under the clamp' });
  expect(program.state().session?.story.condemned.at(-1)?.found).toBe('hose split under the clamp');
});

test('left empty it records nothing, and the walk goes on', () => {
  const program = atNamed();

  press(program, 'Zy<enter>');

  expect(last(program)).toMatchObject({ kind: 'condemned' });
  expect(program.state().screen).toMatchObject({ kind: 'walk', input: { kind: 'ready' } });
});

test('after "repaired" one page asks what was done, minutes, parts and cost', () => {
  const program = atMended();
  expect(program.state().screen.kind).toBe('mended');

  press(program, 'new hose<enter>1:20<enter>2 x clamp at 0.80; hose<enter>12.40 USD<enter>');

  expect(last(program)).toMatchObject({
    kind: 'described',
    did: 'new hose',
    minutes: 80,
    parts: ['2 x clamp at 0.80', 'hose'],
    cost: '12.40 USD',
  });
});

test('minutes that are none are asked again, and nothing is lost', () => {
  const program = atMended();

  press(program, 'new hose<enter>a while<enter><enter><enter>');

  expect(program.state().screen).toMatchObject({ kind: 'mended', at: 1 });
  expect(last(program)).toMatchObject({ kind: 'repaired' });
});

test('m opens the page again, with what is noted', () => {
  const program = atMended();
  press(program, 'new hose<enter><enter><enter><enter>');

  press(program, 'Zm<down>25<enter><enter><enter>');

  expect(program.state().session?.story.repairs.at(-1)).toMatchObject({
    did: 'new hose',
    minutes: 25,
  });
});
