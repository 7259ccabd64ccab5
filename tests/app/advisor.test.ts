import { expect, test } from 'vitest';
import { makeProgram, press, startKeys, thoughtOut } from '../helpers/program.ts';

test('advice is worked out behind the keys until it is final', async () => {
  const { program } = makeProgram();
  press(program, startKeys());

  expect(program.state().session?.advice).toBeUndefined();
  await thoughtOut(program);

  expect(program.state().session?.advice?.final).toBe(true);
});

test('nobody thinks on about a session that was shut', async () => {
  const { program } = makeProgram();
  press(program, startKeys());

  program.shut();
  for (let turn = 0; turn < 20; turn += 1) await new Promise((done) => setImmediate(done));

  expect(program.state().session?.advice).toBeUndefined();
});
