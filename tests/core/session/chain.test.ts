import * as fc from 'fast-check';
import { createHash } from 'node:crypto';
import { describe, expect, test } from 'vitest';
import { forgeLine, readLine } from '../../../src/core/session/record/chain.ts';
import { sha256 } from '../../../src/store/recover.ts';
import { chained } from '../../helpers/session-file.ts';

const bare = (line: string) => line.slice(0, -1);
const anyText = fc.string({ unit: 'binary', maxLength: 40 });

describe('one line of a session file', () => {
  test('ends with the SHA-256 of the bytes before its link', () => {
    const { line, link } = forgeLine({ n: 1, text: 'é' }, 'before', sha256);

    const body = '{"n":1,"text":"é","previous":"before"';
    const expected = createHash('sha256').update(Buffer.from(body)).digest('hex');
    expect(link).toBe(expected);
    expect(line).toBe(`${body},"link":"${expected}"}\n`);
  });

  test('the fingerprint is the published one', () => {
    // FIPS 180-4 example "abc", value from memory.
    expect(sha256('abc')).toBe('ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad');
  });

  test('is whole when it follows the line it names', () => {
    const [first = '', second = ''] = chained([{ n: 1 }, { n: 2 }]);
    const head = readLine(bare(first), '', sha256);

    expect(head.kind).toBe('whole');
    expect(readLine(bare(second), head.kind === 'whole' ? head.link : '', sha256)).toMatchObject({
      kind: 'whole',
      value: { n: 2 },
    });
  });

  test('is a broken chain behind any other line', () => {
    const [first = ''] = chained([{ n: 1 }]);

    expect(readLine(bare(first), 'f'.repeat(64), sha256).kind).toBe('broken-chain');
  });

  test('whatever is written is read back', () => {
    fc.assert(
      fc.property(anyText, fc.integer(), (text, n) => {
        const { line } = forgeLine({ n, text }, '', sha256);
        const read = readLine(bare(line), '', sha256);
        expect(read).toMatchObject({ kind: 'whole', value: { n, text } });
      }),
      { seed: 51, numRuns: 500 },
    );
  });

  test('text that looks like a link does not pass for one', () => {
    const fake = `","link":"${'0'.repeat(64)}"}`;
    const { line } = forgeLine({ text: fake }, '', sha256);

    expect(readLine(bare(line), '', sha256)).toMatchObject({
      kind: 'whole',
      value: { text: fake },
    });
  });

  test('cut anywhere it is torn', () => {
    const line = bare(forgeLine({ n: 1, text: 'bench' }, '', sha256).line);
    const kinds = Array.from(line, (_, end) => readLine(line.slice(0, end), '', sha256).kind);

    expect(new Set(kinds)).toEqual(new Set(['torn']));
  });

  test('with any letter changed it is never whole', () => {
    const line = bare(forgeLine({ n: 1, text: 'bench' }, '', sha256).line);

    fc.assert(
      fc.property(fc.nat(line.length - 1), fc.string({ minLength: 1, maxLength: 1 }), (at, put) => {
        fc.pre(line[at] !== put);
        const changed = line.slice(0, at) + put + line.slice(at + 1);
        expect(readLine(changed, '', sha256).kind).not.toBe('whole');
      }),
      { seed: 52, numRuns: 2000 },
    );
  });
});
