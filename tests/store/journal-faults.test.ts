import { describe, expect, test } from 'vitest';
import { either, failKind, sweep } from '../helpers/journal-run.ts';
import { failFrom } from '../helpers/memory-files.ts';

const short = { atOnce: 40 };
const failedOnce = () => failKind('sync', 1, 'EIO');

describe('six events on a disk that refuses one call after another', () => {
  test.each([
    ['one call', 'EIO', 1],
    ['two calls', 'EIO', 2],
    ['three calls', 'ENOSPC', 3],
    ['eight calls', 'EIO', 8],
  ])(
    'refusing %s, nothing said to be kept is lost and no torn bytes stay',
    async (_, code, times) => {
      const { runs, failures } = await sweep((nth) => failFrom(nth, code, times));

      expect(failures).toEqual([]);
      expect(runs).toBeGreaterThan(10);
    },
  );

  test('the same with one call refused among writes that take 40 bytes at most', async () => {
    const { runs, failures } = await sweep((nth) => failFrom(nth, 'ENOSPC'), short);

    expect(failures).toEqual([]);
    expect(runs).toBeGreaterThan(40);
  });

  test.each(['write', 'size', 'sync', 'syncNow', 'rename', 'syncFolder', 'create'])(
    'the same when, after a failed sync, the way out of it meets a refused %s',
    async (name) => {
      const nth = name === 'sync' ? 1 : 0;
      const { runs, failures } = await sweep(
        (place) => either(failedOnce(), failKind(name, place + nth, 'EIO', 2)),
        short,
      );

      expect(failures).toEqual([]);
      expect(runs).toBeGreaterThan(1);
    },
  );

  test('the same when the old file does not close', async () => {
    const { failures } = await sweep((nth) => either(failedOnce(), failKind('close', nth, 'EIO')));

    expect(failures).toEqual([]);
  });

  test('the same when the torn bytes cannot be cut off at once', async () => {
    const { failures } = await sweep((nth) => failFrom(nth, 'EIO', 2), short);

    expect(failures).toEqual([]);
  });

  test('the same when it settles by blocking', async () => {
    const { failures } = await sweep((nth) => failFrom(nth, 'EIO'), { blocking: true });

    expect(failures).toEqual([]);
  });
});
