// The whole check, in the order in which it fails soonest; closes with one plain line of counts.
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { root, run } from './setup.mjs';

const module = (name, file) => join(root, 'node_modules', name, file);
const knip = module('knip', 'bin/knip.js');
const steps = [
  ['format', [module('oxfmt', 'bin/oxfmt'), '--check', 'src', 'tests', '.scripts']],
  ['lint', [module('oxlint', 'bin/oxlint'), '--type-aware', '--deny-warnings', 'src', 'tests']],
  ['types', [module('typescript', 'bin/tsc'), '-p', 'tsconfig.json']],
  ['types of the core', [module('typescript', 'bin/tsc'), '-p', 'src/core/tsconfig.json']],
  ['unused code', [knip, '--config', '.scripts/knip.json']],
  ['unused in the program', [knip, '--production', '--config', '.scripts/knip-shipped.json']],
  ['build', [join(root, '.scripts', 'build.mjs')]],
  ['package', [module('publint', 'src/cli.js'), '--strict', '--pack', 'npm']],
];

for (const [name, args] of steps) {
  const status = run(args);
  if (status !== 0) {
    process.stderr.write(`check: ${name} failed\n`);
    process.exit(1);
  }
  process.stderr.write(`check: ${name} ok\n`);
}

const scratch = mkdtempSync(join(tmpdir(), 'droplight-check-'));
const report = join(scratch, 'report.json');
const status = run([
  module('vitest', 'vitest.mjs'),
  'run',
  '--config',
  'tests/vitest.config.ts',
  // Counting what is reached takes the tests two to three times as long: `npm test` leaves it out.
  ...(process.argv.includes('--without-coverage') ? [] : ['--coverage']),
  '--reporter=dot',
  '--reporter=json',
  `--outputFile.json=${report}`,
]);
const { numPassedTests: passed, numFailedTests: failed } = JSON.parse(readFileSync(report, 'utf8'));
rmSync(scratch, { recursive: true });
if (status !== 0 && failed === 0)
  process.stderr.write(
    'check: coverage under its floor, or an error outside the tests (see above)\n',
  );
process.stdout.write(`${passed} passed, ${failed} failed\n`);
process.exit(status);
