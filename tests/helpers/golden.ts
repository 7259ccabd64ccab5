import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { expect } from 'vitest';

/**
 * Holds text to a file under tests/golden byte for byte. `npm run golden` writes the files anew;
 * they are read like code before they are committed.
 */
export function expectGolden(name: string, text: string): void {
  const path = join('tests', 'golden', name);
  if (process.env['GOLDEN'] === 'write') {
    mkdirSync(dirname(path), { recursive: true });
    writeFileSync(path, text);
  }
  expect(text).toBe(existsSync(path) ? readFileSync(path, 'utf8') : `there is no ${path} yet`);
}

/**
 * A frame without the minute of its clock: the clock of these tests goes on with every message, and
 * in how many pieces the advice comes hangs on how busy the machine is.
 */
export const withoutMinute = (frame: string): string => frame.replace(/\b10:0\d\b/g, '10:0x');
