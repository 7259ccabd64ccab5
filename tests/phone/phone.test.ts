import fc from 'fast-check';
import { connect } from 'node:net';
import { afterEach, expect, test } from 'vitest';
import { maxPicture, readPicture } from '../../src/core/picture/picture.ts';
import { firstOf, problemsOf, trusted } from '../../src/core/problem.ts';
import { openPhone, type Patience, type Phone } from '../../src/phone/phone.ts';
import { drawnJpeg, drawnPicture } from '../helpers/drawn-picture.ts';
import { ask, boundary, formOf, part, photoHead, post } from '../helpers/sent.ts';

const png = drawnPicture('the fuse');
const patient: Patience = { idle: 60_000, request: 10_000 };
const opened: Phone[] = [];
afterEach(() => {
  for (const phone of opened.splice(0)) phone.stop();
});

/** A page open on this machine alone, and what it took. */
async function page(patience = patient) {
  const taken: Uint8Array[] = [];
  let idle = 0;
  const listener = {
    take: (bytes: Uint8Array) => {
      const read = readPicture(bytes);
      if (read.kind === 'bad') return firstOf(problemsOf(read) as [never, ...never[]]);
      taken.push(bytes);
      return undefined;
    },
    idle: () => {
      idle += 1;
    },
  };
  const phone = trusted(await openPhone('127.0.0.1', listener, patience));
  opened.push(phone);
  return { ...phone, taken, idle: () => idle };
}

test('the address holds 128 random bits, another one each time', async () => {
  const [one, other] = [await page(), await page()];

  expect(one.url).toMatch(/^http:\/\/127\.0\.0\.1:\d+\/[\w-]{22}$/);
  expect(one.url.slice(-22)).not.toBe(other.url.slice(-22));
});

test('it shows a form that needs no script, and may do nothing else', async () => {
  const { url } = await page();

  const { status, text, heads } = await ask(url);

  expect(status).toBe(200);
  expect(text).toContain('<input id="photo" type="file" name="photo" accept="image/*" capture=');
  expect(text).toContain('whoever is on this network could see it');
  expect(text).not.toMatch(/<script|http:|https:|src=/);
  expect(heads).toMatchObject({
    'cache-control': 'no-store',
    'referrer-policy': 'no-referrer',
    'x-content-type-options': 'nosniff',
    connection: 'close',
  });
  expect(heads['content-security-policy']).toMatch(/^default-src 'none'; style-src 'sha256-/);
});

test('pictures are taken one after the other, byte for byte, whatever their names', async () => {
  const { url, taken } = await page();

  const first = await post(url, formOf(part(photoHead(), png)));
  const second = await post(url, formOf(part(photoHead('a.exe'), drawnJpeg())));

  expect([first.status, second.status]).toEqual([200, 200]);
  expect(first.text).toContain('Taken: it stands on the screen');
  expect(taken.map((bytes, at) => Buffer.compare(bytes, at === 0 ? png : drawnJpeg()))).toEqual([
    0, 0,
  ]);
});

const token = 'A'.repeat(22);
test.each<[what: string, sending: Parameters<typeof ask>[1], status: number]>([
  ['another path', { path: '/' }, 404],
  ['a guessed token', { path: `/${token}` }, 404],
  ['a file below it', { path: '/../../etc/hostname' }, 404],
  ['another host by name', { heads: { host: 'evil.example' } }, 404],
  ['another method', { method: 'DELETE' }, 405],
  ['a body that is no form', { method: 'POST', body: png }, 415],
  [
    'a form of words',
    {
      method: 'POST',
      body: 'photo=x',
      heads: { 'content-type': 'application/x-www-form-urlencoded' },
    },
    415,
  ],
])('%s is refused, and nothing is kept', async (_, sending, status) => {
  const { url, taken } = await page();

  const answer = await ask(url, sending);

  expect(answer.status).toBe(status);
  expect(answer.text).not.toContain(new URL(url).pathname);
  expect(taken).toEqual([]);
});

test.each<[what: string, body: Uint8Array, status: number]>([
  ['two pictures', formOf(part(photoHead(), png), part(photoHead(), png)), 400],
  [
    'a field beside it',
    formOf(part('Content-Disposition: form-data; name="x"', '1'), part(photoHead(), png)),
    400,
  ],
  [
    'another field',
    formOf(part('Content-Disposition: form-data; name="x"; filename="a.png"', png)),
    400,
  ],
  ['a path in its name', formOf(part(photoHead('../../.bashrc'), png)), 400],
  ['a path of Windows in its name', formOf(part(photoHead(String.raw`C:\a.png`), png)), 400],
  ['no end', Buffer.from(formOf(part(photoHead(), png)).subarray(0, -30)), 400],
  ['something behind its end', Buffer.concat([formOf(part(photoHead(), png)), png]), 400],
  ['something before its beginning', Buffer.concat([png, formOf(part(photoHead(), png))]), 400],
  ['two heads', formOf(part(`${photoHead()}\r\n${photoHead('b.png')}`, png)), 400],
  ['no picture', formOf(part(photoHead(''), '')), 422],
  ['an empty file', formOf(part(photoHead(), '')), 422],
  ['words', formOf(part(photoHead(), 'rm -rf')), 422],
  ['half a picture', formOf(part(photoHead(), png.subarray(0, 4000))), 422],
  ['more than the limit', formOf(part(photoHead(), Buffer.alloc(maxPicture + 20_000))), 413],
])('a form with %s is refused, and nothing is kept', async (_, body, status) => {
  const { url, taken } = await page();

  expect((await post(url, body)).status).toBe(status);
  expect(taken).toEqual([]);
});

test('a body that never says how long it is is cut off at the limit', async () => {
  const { url, taken } = await page();

  const { status } = await post(url, formOf(part(photoHead(), Buffer.alloc(maxPicture + 20_000))), {
    'transfer-encoding': 'chunked',
  });

  expect([413, undefined]).toContain(status);
  expect(taken).toEqual([]);
});

/** What a raw connection gets back before it is closed. */
const raw = (url: string, words: string): Promise<string> =>
  new Promise((resolve) => {
    let text = '';
    const socket = connect(Number(new URL(url).port), '127.0.0.1', () => socket.write(words));
    socket.on('data', (bytes) => {
      text += bytes.toString('latin1');
    });
    socket.on('error', () => {});
    socket.on('close', () => resolve(text));
  });

const head = (url: string, length: number): string =>
  `POST ${new URL(url).pathname} HTTP/1.1\r\nHost: ${new URL(url).host}\r\nContent-Type: multipart/form-data; boundary=${boundary}\r\nContent-Length: ${length}\r\n\r\n`;

test('who sends too slowly is cut off, and nothing is kept', async () => {
  const { url, taken } = await page({ idle: 60_000, request: 300 });

  const answer = await raw(url, `${head(url, 5000)}--${boundary}`);

  expect(answer).not.toContain(' 200 ');
  expect(taken).toEqual([]);
});

test('while one picture comes in another is told to wait', async () => {
  const { url, taken, stop } = await page();
  const slow = raw(url, `${head(url, 5000)}--${boundary}`);
  await expect.poll(async () => (await post(url, formOf(part(photoHead(), png)))).status).toBe(409);
  stop();
  await slow;

  expect(taken).toEqual([]);
});

test('a second request behind a body is not answered', async () => {
  const { url, taken } = await page();
  const body = Buffer.from(formOf(part(photoHead(), png))).toString('latin1');
  const first = head(url, body.length);

  const answer = await raw(url, `${first}${body}${first}${body}`);

  expect(answer.match(/HTTP\/1\.1/g)?.length).toBe(1);
  expect(taken.length).toBeLessThan(2);
});

test('once it is shut its address leads nowhere', async () => {
  const { url, stop, taken } = await page();
  stop();

  expect((await ask(url)).status).toBeUndefined();
  expect((await post(url, formOf(part(photoHead(), png)))).status).toBeUndefined();
  expect(taken).toEqual([]);
});

test('it shuts itself when nothing comes', async () => {
  const { url, idle } = await page({ idle: 50, request: 1000 });

  await expect.poll(idle).toBe(1);
  expect((await ask(url)).status).toBeUndefined();
});

test('an address that is not of this machine is told in one problem', async () => {
  const opening = await openPhone('192.0.2.77', { take: () => undefined, idle: () => {} });

  expect(opening).toMatchObject({ kind: 'bad', problems: [{ code: 'phone-refused' }] });
});

test('whatever bytes come in a form, nothing but a whole picture is kept', async () => {
  const { url, taken } = await page();
  const whole = Buffer.from(formOf(part(photoHead(), png)));
  await fc.assert(
    fc.asyncProperty(
      fc.oneof(
        fc.uint8Array({ maxLength: 400 }),
        fc
          .tuple(fc.nat(whole.length - 1), fc.nat(200))
          .map(([at, more]) =>
            Buffer.concat([whole.subarray(0, at), whole.subarray(at + 1 + more)]),
          ),
      ),
      async (body) => {
        const before = taken.length;
        const { status } = await post(url, body);
        const kept = taken.slice(before);
        expect(kept.length).toBe(status === 200 ? 1 : 0);
        expect(kept.filter((bytes) => readPicture(bytes).kind === 'bad')).toEqual([]);
      },
    ),
    { seed: 20_260_411, numRuns: 150 },
  );
});
