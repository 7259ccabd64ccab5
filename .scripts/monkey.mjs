// Strikes a hundred thousand random keys at jobs on the shipped trees, by fixed seeds; or as many as are named.
import { join } from 'node:path';
import { root, run } from './setup.mjs';

const [keys = '100000'] = process.argv.slice(2);

process.exit(
  run(
    [
      join(root, 'node_modules/vitest/vitest.mjs'),
      'run',
      '--config',
      'tests/vitest.config.ts',
      'tests/properties/monkey.test.ts',
    ],
    { env: { MONKEY_KEYS: keys } },
  ),
);
