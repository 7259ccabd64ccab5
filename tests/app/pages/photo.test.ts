import { createHash } from 'node:crypto';
import { readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { expect, test } from 'vitest';
import { bindings } from '../../../src/app/pages/table.ts';
import { drawnPicture } from '../../helpers/drawn-picture.ts';
import { makeProgram, press, startKeys } from '../../helpers/program.ts';

const png = drawnPicture('the fuse');

/** A job at a check that is looked at, and a photo in the folder where the program was started. */
function atCheck() {
  const made = makeProgram();
  writeFileSync(join(made.folder, 'fuse one.png'), png);
  press(made.program, `${startKeys()}y`);
  const session = () => {
    const { session: open } = made.program.state();
    if (open === undefined) throw new Error('a session is open');
    return open;
  };
  return { ...made, session, last: () => session().events.at(-1) };
}

test('P asks for the path and for what the photo shows; it belongs to the step on screen', () => {
  const { program, session, last } = atCheck();
  const about = program.state().question.due?.asked?.id;

  press(program, 'P');
  program.dispatch({ kind: 'pasted', text: "'fuse one.png'\n" });
  press(program, '<enter>The fuse, green<enter>');

  const sha256 = createHash('sha256').update(png).digest('hex');
  expect(last()).toMatchObject({ kind: 'photographed', caption: 'The fuse, green', about, sha256 });
  const [photo] = session().story.photos;
  expect(photo?.bytes).toBe(png.length);
  const copied = readFileSync(join(dirname(session().path), photo?.file ?? ''));
  expect(Buffer.compare(copied, png)).toBe(0);
  expect(program.state().screen.kind).toBe('walk');
  expect(program.state().notice?.text).toBe('Photo: 01-the-fuse-green.png');
});

test('the caption may stay empty', () => {
  const { program, last } = atCheck();

  press(program, 'Pfuse one.png<enter><enter>');

  expect(last()).toMatchObject({ kind: 'photographed', caption: '' });
});

test('what is no photo is told, and the page keeps what was typed', () => {
  const { program, session } = atCheck();
  const { length } = session().events;

  press(program, 'Pfuse two.png<enter>the fuse<enter>');

  expect(program.state().notice).toMatchObject({ kind: 'problem' });
  expect(program.state().screen).toMatchObject({
    kind: 'photo',
    fields: { path: { before: 'fuse two.png' }, caption: { before: 'the fuse' } },
  });
  expect(session().events.length).toBe(length);
});

test('without a path nothing is kept', () => {
  const { program, session } = atCheck();
  const { length } = session().events;

  press(program, 'P<enter><enter>');

  expect(program.state().notice?.text).toContain('Say where the photo is');
  press(program, '<esc>');
  expect(program.state().screen.kind).toBe('walk');
  expect(session().events.length).toBe(length);
});

test('a photo stands in the history, and is taken back like anything else', () => {
  const { program, session } = atCheck();
  press(program, 'Pfuse one.png<enter>the fuse<enter>');

  press(program, 'b');

  expect(program.state().notice?.text).toContain('Taken back: A photograph was taken: the fuse.');
  expect(session().story.photos).toEqual([]);
});

test('words left on the page wait there', () => {
  const { program } = atCheck();

  press(program, 'Pfuse one.png<esc>y');
  expect(program.state().screen.kind).toBe('walk');
  press(program, 'P');

  expect(program.state().screen).toMatchObject({ fields: { path: { before: 'fuse one.png' } } });
});

test('a photo can still be added to a closed job', () => {
  const { program, last } = atCheck();
  press(program, '2c3y');

  press(program, 'Pfuse one.png<enter><enter>');

  expect(last()).toMatchObject({ kind: 'photographed' });
});

test('the key of photos is told on the page of keys', () => {
  expect(bindings.filter(({ command }) => command === 'photo').map(({ keys }) => keys)).toEqual([
    ['P'],
  ]);
});
