import { expect, test } from 'vitest';
import { linesOf, maxLine } from '../../src/store/lines.ts';

async function* arriving(...chunks: readonly (string | Uint8Array)[]) {
  for (const chunk of chunks) {
    await Promise.resolve();
    yield typeof chunk === 'string' ? Buffer.from(chunk) : chunk;
  }
}

/** Each line as it is, or the code of what is wrong with it. */
async function told(stream: AsyncIterable<Uint8Array>): Promise<readonly string[]> {
  const all: string[] = [];
  for await (const line of linesOf(stream, 'standard input'))
    all.push(line.kind === 'good' ? line.value : `bad ${line.problems[0]?.code ?? ''}`);
  return all;
}

test.each([
  ['in pieces', ['a', 'b\ncd', '\n'], ['ab', 'cd']],
  ['without a last newline', ['a\nb'], ['a', 'b']],
  ['with a return before the newline', ['a\r', '\nb\r\n'], ['a', 'b']],
  ['empty ones too', ['\n\na'], ['', '', 'a']],
  ['with a line separator of Unicode within', ['a\u2028b\n'], ['a\u2028b']],
  ['of nothing', [], []],
])('lines arrive whole %s', async (_, chunks, lines) => {
  expect(await told(arriving(...chunks))).toEqual(lines);
});

test('a sign cut between two chunks is one sign', async () => {
  const bytes = Buffer.from('12 \u03a9\n');

  expect(await told(arriving(bytes.subarray(0, 4), bytes.subarray(4)))).toEqual(['12 \u03a9']);
});

test('a line that is no UTF-8 is told in its place, and those behind it still count', async () => {
  const bytes = Buffer.from([0x61, 0x0a, 0x62, 0xff, 0x0a, 0x63]);

  expect(await told(arriving(bytes))).toEqual(['a', 'bad not-utf-8', 'c']);
});

test('a line that never ends is told, and nothing more is read', async () => {
  let read = 0;
  const endless = async function* zeros() {
    for (;;) {
      await Promise.resolve();
      read += 1;
      yield new Uint8Array(65_536).fill(0x30);
    }
  };

  expect(await told(endless())).toEqual(['bad line-too-long']);
  expect(read).toBe(maxLine / 65_536 + 1);
});

test.each([0, 1])('the longest line is taken, and one of %i byte more is not', async (more) => {
  const long = '0'.repeat(maxLine + more);

  expect(await told(arriving(`${long}\nb`))).toEqual(
    more === 0 ? [long, 'b'] : ['bad line-too-long'],
  );
});

test('what the system refuses to read is told', async () => {
  const refused = async function* folder() {
    yield await Promise.resolve(Buffer.from('a\nb'));
    throw Object.assign(new Error('planted'), { code: 'EISDIR' });
  };

  expect(await told(refused())).toEqual(['a', 'bad EISDIR']);
});
