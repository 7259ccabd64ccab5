import { describe, expect, test } from 'vitest';
import { gated, openJournal, path, turn } from '../helpers/journal-run.ts';
import { failFrom } from '../helpers/memory-files.ts';
import { eventsOf, note, readBack } from '../helpers/session-file.ts';

const written = (files: { text: (path: string) => string }) => eventsOf(files.text(path));

describe('keeping events', () => {
  test('an event is in the file as soon as it is appended, which outlives a killed process', () => {
    const { files, journal, kept } = openJournal();

    journal.append(note(1));

    expect(written(files)).toEqual([note(1)]);
    expect(kept).toEqual([]);
  });

  test('it is told as kept once the disk has it', async () => {
    const { files, journal, kept } = openJournal();

    journal.append(note(1));
    await journal.settled();

    expect(kept).toEqual([1]);
    expect(eventsOf(files.afterPowerLoss(path) ?? '')).toEqual([note(1)]);
  });

  test('one sync runs at a time, and one covers everything written meanwhile', async () => {
    const { files, journal, kept } = openJournal();
    const gate = gated(files);

    journal.append(note(1));
    await turn();
    for (const n of [2, 3, 4, 5]) journal.append(note(n));
    await turn();
    expect(gate.waiting).toHaveLength(1);
    gate.open();
    await turn();
    expect(kept).toEqual([1]);
    gate.open();
    await journal.settled();

    expect(kept).toEqual([1, 5]);
    expect(files.calls.filter(({ name }) => name === 'sync')).toHaveLength(2);
  });

  test('settled waits for what is appended while it waits', async () => {
    const { files, journal } = openJournal();
    const gate = gated(files);
    journal.append(note(1));
    await turn();
    let done = false;
    const settled = journal.settled().then(() => (done = true));

    journal.append(note(2));
    gate.open();
    await turn();
    expect(done).toBe(false);
    gate.open();
    await settled;

    expect(readBack(files.afterPowerLoss(path) ?? '')).toMatchObject({ events: [1, 2] });
  });

  test('with nothing new to keep, settled does not touch the disk', async () => {
    const { files, journal } = openJournal();

    await journal.settled();

    expect(files.calls).toEqual([]);
  });

  test('settle blocks until everything is on the disk', () => {
    const { files, journal } = openJournal();

    journal.append(note(1));
    journal.append(note(2));
    journal.settle();

    expect(readBack(files.afterPowerLoss(path) ?? '')).toMatchObject({ events: [1, 2] });
  });

  test('the link is that of the last line', () => {
    const { files, journal } = openJournal();

    journal.append(note(1));

    expect(files.text(path)).toContain(`"link":"${journal.link()}"}\n`);
    expect(files.text(path).endsWith(`"link":"${journal.link()}"}\n`)).toBe(true);
  });

  test('closed, it holds no handle', () => {
    const { files, journal } = openJournal();

    journal.close();

    expect(files.openHandles).toBe(0);
  });

  test('many short writes make whole lines', async () => {
    const { files, journal } = openJournal();
    files.atOnce = 7;

    journal.append(note(1));
    await journal.settled();

    expect(readBack(files.text(path))).toEqual({ events: [1], damage: [], openEnd: false });
  });
});

describe('a full disk', () => {
  test.each([0, 1, 100, 250])(
    'with room for %i bytes holds the entry and leaves no torn bytes',
    async (room) => {
      const { files, journal, kept, troubles } = openJournal();
      const before = files.text(path);
      files.room = room;

      journal.append(note(1, 'x'.repeat(300)));
      await turn();

      expect(troubles.map(({ code, path: where }) => [code, where])).toEqual([['ENOSPC', path]]);
      expect(kept).toEqual([]);
      expect(files.text(path)).toBe(before);
    },
  );

  test('takes everything that was held, in order, once there is room', async () => {
    const { files, journal, kept } = openJournal();
    files.room = 100;
    for (const n of [1, 2, 3]) journal.append(note(n));
    await expect(journal.settled()).rejects.toMatchObject({ code: 'ENOSPC' });

    files.room = Infinity;
    journal.retry();
    await journal.settled();

    expect(kept).toEqual([3]);
    expect(readBack(files.text(path))).toEqual({
      events: [1, 2, 3],
      damage: [],
      openEnd: false,
    });
  });

  test('is told in words that help', () => {
    const { files, journal } = openJournal();
    files.room = 0;
    journal.append(note(1));

    expect(() => journal.settle()).toThrow(
      expect.objectContaining({
        name: 'StoreError',
        message: 'The disk is full.',
        mend: 'Free some room, then try again.',
      }),
    );
  });
});

describe('a sync that fails', () => {
  test('is told, and what it covered is written anew before it counts as kept', async () => {
    const { files, journal, kept, troubles } = openJournal();
    files.refuse = ({ name }) => (name === 'sync' && troubles.length === 0 ? 'EIO' : undefined);

    journal.append(note(1));
    await turn();
    expect(troubles.map(({ code }) => code)).toEqual(['EIO']);
    expect(kept).toEqual([]);
    await journal.settled();

    expect(kept).toEqual([1]);
    expect(readBack(files.afterPowerLoss(path) ?? '')).toMatchObject({ events: [1] });
    expect(files.list('jobs')).toEqual(['job.jsonl']);
    expect(files.openHandles).toBe(1);
  });

  test('in settle makes what it covered doubtful too', async () => {
    const { files, journal, losses, hold } = openJournal();
    journal.append(note(1));
    files.refuse = failFrom(files.calls.length + 1, 'EIO');
    expect(() => journal.settle()).toThrow('The disk does not answer properly.');

    files.refuse = () => undefined;
    await journal.settled();
    hold(1, 'settled');

    expect(losses).toEqual([]);
  });

  test('behind a settle is not hidden by it', async () => {
    const { files, journal, losses, hold } = openJournal();
    const gate = gated(files);
    journal.append(note(1));
    files.refuse = ({ name }) => (name === 'sync' ? 'EIO' : undefined);
    await turn();

    journal.settle();
    hold(1, 'settle');
    gate.open();

    expect(losses).toEqual([]);
  });

  test('that never came keeps no one from going on when there is no room for a copy', async () => {
    const { files, journal, kept } = openJournal();
    const gate = gated(files);
    journal.append(note(1));
    await turn();
    files.room = 1000;
    expect(() => journal.settle()).toThrow('The disk is full.');
    gate.open();
    files.gate = () => Promise.resolve();
    await turn();

    journal.append(note(2));
    await turn();

    expect(kept).toEqual([1, 2]);
  });
});

describe('leaving', () => {
  test('settle tells what is kept', () => {
    const { journal, kept } = openJournal();

    journal.append(note(1));
    journal.settle();

    expect(kept).toEqual([1]);
  });

  test('in a burst of keys brings no trouble afterwards', async () => {
    const { files, journal, troubles } = openJournal();
    const gate = gated(files);
    journal.append(note(1));
    await turn();

    journal.append(note(2));
    journal.settle();
    journal.close();
    gate.open();
    await turn();

    expect(troubles).toEqual([]);
  });
});
