import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { isBuiltin } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { buildProgram } from '../.scripts/build.mjs';

// Who installs the program gets its bundle and its trees, and nothing more is fetched.
test('the built program needs nothing but Node, and the package holds it', async () => {
  const outdir = mkdtempSync(join(tmpdir(), 'droplight-packed-'));
  const needed = await buildProgram({ outdir });
  rmSync(outdir, { recursive: true });
  const held = JSON.parse(readFileSync('package.json', 'utf8')) as object;

  expect(needed).toContain('node:sqlite');
  expect(needed.filter((name) => !isBuiltin(name))).toEqual([]);
  expect(held).not.toHaveProperty('dependencies');
  expect(held).toMatchObject({
    files: ['.build', 'trees'],
    bin: { droplight: '.build/droplight.js' },
  });
});
