import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { began, mended, proven, tell } from '../../helpers/plain.ts';

// oxlint-disable-next-line no-control-regex -- control bytes are what must not be there
const controls = /[\0-\x09\x0b-\x1f\x7f-\x9f]/;

test('a whole job is told from the complaint to the account, without one control byte but newline', async () => {
  const { code, out, err, kinds, folder } = await tell([...began, ...mended, ...proven]);

  expect({ code, err }).toEqual({ code: 0, err: '' });
  expect(out).not.toMatch(controls);
  expect(kinds.join(' ')).toBe(
    'check-begun standing found check-begun standing found found condemned described standing repaired described standing found standing proved closed',
  );
  const sessions = readdirSync(join(folder, 'sessions'));
  const account = sessions.find((name) => name.endsWith('.md')) ?? '';
  const text = readFileSync(join(folder, 'sessions', account), 'utf8');
  expect(text).toContain('gray-film');
  expect(text).toContain('brushed');
  expect(out).toMatch(/\naccount: \S+my-truck-no-supply\.md\n$/);
}, 120_000);

test('each caution is read by itself before its step, and the claim shows its lines before it takes y', async () => {
  const toTheCause = [...began, '1', 'y', '5', '1', '2', '3', 'y', '12.6', '12.3'];
  const { answers, kinds } = await tell([...toTheCause, 'y', '2', '1', '1', '2', 'y']);
  const [asked = '', early = '', wrong = '', second = '', again = '', claim = '', after = ''] =
    answers.slice(toTheCause.length);

  expect(asked).toContain('Battery acid blinds.');
  expect(asked).not.toContain('Ground lead off first');
  expect(early).toContain('"y" means nothing here.');
  expect(wrong).toContain('This is page 1 of the cautions: 1 says it was read.');
  expect(second).toContain('Ground lead off first');
  // The number of a page that was read says nothing of the next one.
  expect(again).toContain('This is page 2 of the cautions');
  expect(claim).toMatch(/Where: [\s\S]*Shows: [\s\S]*y: this is it/);
  expect(after).toContain('What exactly was found, and where?');
  expect(kinds.slice(-2)).toEqual(['condemned', 'paused']);
}, 120_000);
