import { expect, test } from 'vitest';
import { teller } from '../../src/commands/program/progress.ts';

/** A teller whose clock stands where it is put, in milliseconds. */
function waiting(drawsOver: boolean | undefined) {
  let err = '';
  let mono = 0;
  const io = {
    err: (text: string) => {
      err += text;
    },
    clock: () => ({ at: '2026-04-11T10:42:00.000+00:00', run: 'run-1', mono, up: 0 }),
    ...(drawsOver !== undefined && { drawsOver }),
  };
  return { ...teller(io, 'Planning'), pass: (time: number) => (mono += time), told: () => err };
}

test('a long work is told of on a line drawn over itself, and gone at the end', () => {
  const { tell, end, pass, told } = waiting(true);

  pass(300);
  tell({ done: 1, of: 4 });
  tell({ done: 2, of: 4 });
  end();

  expect(told()).toBe('\rPlanning: 1 of 4\rPlanning: 2 of 4\r\u001b[K');
});

test('what is over within a moment is not told of', () => {
  const { tell, end, pass, told } = waiting(true);

  pass(299);
  tell({ done: 1, of: 4 });
  end();

  expect(told()).toBe('');
});

test('less than a hundredth more is not drawn again', () => {
  const { tell, pass, told } = waiting(true);

  pass(1000);
  for (let done = 100; done < 105; done += 1) tell({ done, of: 1000 });

  expect(told()).toBe('\rPlanning: 100 of 1000');
});

test.each([false, undefined])('a file or another program is told nothing (%s)', (drawsOver) => {
  const { tell, end, pass, told } = waiting(drawsOver);

  pass(5000);
  tell({ done: 1, of: 2 });
  end();

  expect(told()).toBe('');
});
