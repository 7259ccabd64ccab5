import { readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { afterEach, expect, test } from 'vitest';
import type { Program } from '../../../src/app/program.ts';
import { drawnPicture } from '../../helpers/drawn-picture.ts';
import { makeProgram, press, startKeys, type Made } from '../../helpers/program.ts';
import { ask, formOf, part, photoHead, post } from '../../helpers/sent.ts';

const png = drawnPicture('the fuse');
const body = formOf(part(photoHead(), png));
const programs: Program[] = [];
afterEach(() => {
  for (const program of programs.splice(0)) program.shut();
});

const screen = (program: Program) => {
  const { screen: now } = program.state();
  if (now.kind !== 'phone') throw new Error(`the phone's page is on screen, not ${now.kind}`);
  return now;
};

/** A job at a check, its page open to a telephone on this machine. */
async function atPhone() {
  const made: Made = makeProgram({ phone: { host: '127.0.0.1' } });
  const { program } = made;
  programs.push(program);
  press(program, `${startKeys()}yP`);
  press(program, '<C-p>');
  await expect.poll(() => screen(program).door.kind).toBe('open');
  const { door } = screen(program);
  const session = () => {
    const { session: open } = program.state();
    if (open === undefined) throw new Error('a session is open');
    return open;
  };
  return { program, session, url: door.kind === 'open' ? door.url : '' };
}

const isGone = async (url: string): Promise<boolean> => (await ask(url)).status === undefined;

test('a picture that the phone sends stands at the step, and its caption is asked', async () => {
  const { program, session, url } = await atPhone();
  const about = program.state().question.due?.asked?.id;

  const { status } = await post(url, body);
  press(program, 'Green at the link<enter>');

  expect(status).toBe(200);
  expect(session().story.photos).toMatchObject([{ caption: 'Green at the link', about }]);
  const [photo] = session().story.photos;
  const kept = readFileSync(join(dirname(session().path), photo?.file ?? ''));
  expect(Buffer.compare(kept, png)).toBe(0);
  expect(screen(program)).toMatchObject({ taken: 1, asked: [] });
});

test('several come in a row; captions are asked in their order, and may stay empty', async () => {
  const { program, session, url } = await atPhone();

  await post(url, body);
  await post(url, body);
  press(program, '<enter>the second<enter>');

  expect(session().story.photos.map(({ caption }) => caption)).toEqual(['', 'the second']);
});

test('what is no picture is told on the phone, and recorded nowhere', async () => {
  const { session, url } = await atPhone();
  const { length } = session().events;

  const { status, text } = await post(url, formOf(part(photoHead(), 'words')));

  expect(status).toBe(422);
  expect(text).toContain('This is no picture');
  expect(session().events.length).toBe(length);
});

test.each([
  ['left', 'q'],
  ['left by Escape', '<esc>'],
  ['left with the program', '<C-c>'],
])('once its page is %s the address leads nowhere', async (_, keys) => {
  const { program, url } = await atPhone();

  press(program, keys);

  expect(await isGone(url)).toBe(true);
});

test('a page that is left before it is open never opens', async () => {
  const { program } = makeProgram({ phone: { host: '127.0.0.1' } });
  programs.push(program);
  press(program, `${startKeys()}yP<C-p>q`);

  expect(program.state().screen.kind).toBe('walk');
});

test('Escape drops no caption that was typed', async () => {
  const { program, session, url } = await atPhone();
  await post(url, body);

  press(program, 'Green<esc>');
  expect(screen(program).typed.before).toBe('Green');
  press(program, '<enter>');

  expect(session().story.photos[0]?.caption).toBe('Green');
});

test('the code turns dark for light, and what is typed on the page before waits there', async () => {
  const { program } = makeProgram({ phone: { host: '127.0.0.1' } });
  programs.push(program);
  press(program, `${startKeys()}yPa.png<C-p>`);

  press(program, 't');
  expect(screen(program).turned).toBe(true);
  press(program, 'qP');

  expect(program.state().screen).toMatchObject({ fields: { path: { before: 'a.png' } } });
});

test('without a network there is one clear word', async () => {
  const { program } = makeProgram({ phone: { host: '192.0.2.77' } });
  programs.push(program);
  press(program, `${startKeys()}yP<C-p>`);

  await expect.poll(() => screen(program).door.kind).toBe('shut');
  expect(screen(program).door).toMatchObject({ why: expect.stringContaining('opens no page') });
});
