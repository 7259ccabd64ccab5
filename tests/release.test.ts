import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { byHand, factsOf, headingOf, refusals } from '../.scripts/release/facts.mjs';

const fit = {
  version: '1.2.0',
  locked: '1.2.0',
  heading: '1.2.0',
  changed: [],
  tags: ['v1.1.0'],
  commit: '0123456789abcdef0123456789abcdef01234567',
};

test('a clean commit whose version heads the changes may be a release', () => {
  expect(refusals(fit)).toEqual([]);
  expect(refusals({ ...fit, heading: '1.2.0 (2026-11-27)' })).toEqual([]);
});

test.each([
  [
    'a file not committed',
    { changed: [' M src/main.ts'] },
    /1 file is not committed: src\/main\.ts/,
  ],
  ['changes that are headed otherwise', { heading: 'Unreleased' }, /headed "Unreleased".*1\.2\.0/],
  ['changes headed by a longer version', { heading: '1.2.01' }, /headed "1\.2\.01"/],
  ['no changes at all', { heading: undefined }, /headed ""/],
  ['a lock of another version', { locked: '1.1.0' }, /package-lock\.json says 1\.1\.0/],
  ['a tag that is there', { tags: ['v1.1.0', 'v1.2.0'] }, /tag v1\.2\.0 is there already/],
])('%s is refused', (_, other, told) => {
  expect(refusals({ ...fit, ...other })).toEqual([expect.stringMatching(told)]);
});

test('all reasons are told at once', () => {
  const worst = { ...fit, changed: ['?? a', '?? b'], heading: 'Unreleased', tags: ['v1.2.0'] };

  expect(refusals(worst)).toHaveLength(3);
});

test('the first release of a list of changes is found below its preface', () => {
  expect(headingOf('# Changes\n\nBy release.\n\n## 0.2.0\n\n### New\n\n## 0.1.0\n')).toBe('0.2.0');
  expect(headingOf('# Changes\n')).toBeUndefined();
});

test('what is left to do names the tag, the commit and the package, and what keeps it private', () => {
  const told = byHand(fit, 'droplight-1.2.0.tgz', true).join('\n');

  expect(told).toMatch(/1\. git tag -a v1\.2\.0 .* 0123456789ab\n/);
  expect(told).toContain('take "private" out of package.json');
  expect(told).toContain('npm publish droplight-1.2.0.tgz');
  expect(byHand(fit, 'droplight-1.2.0.tgz', false).join('\n')).not.toContain('private');
});

const place = mkdtempSync(join(tmpdir(), 'droplight-release-test-'));
afterAll(() => rmSync(place, { recursive: true }));

test('the facts are those of the checkout', () => {
  const git = (...args: readonly string[]) =>
    execFileSync('git', ['-c', 'user.name=a', '-c', 'user.email=a@b', ...args], {
      cwd: place,
      encoding: 'utf8',
    }).trim();
  writeFileSync(join(place, 'package.json'), '{ "version": "0.3.0" }');
  writeFileSync(join(place, 'package-lock.json'), '{ "version": "0.2.0" }');
  writeFileSync(join(place, 'CHANGELOG.md'), '# Changes\n\n## 0.3.0\n');
  git('init', '--quiet');
  git('add', '.');
  git('commit', '--quiet', '-m', 'Begin');
  git('tag', 'v0.3.0');
  writeFileSync(join(place, 'left.txt'), '');

  expect(factsOf(place)).toEqual({
    version: '0.3.0',
    locked: '0.2.0',
    heading: '0.3.0',
    changed: ['?? left.txt'],
    tags: ['v0.3.0'],
    commit: git('rev-parse', 'HEAD'),
  });
});
