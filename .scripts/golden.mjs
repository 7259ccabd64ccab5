// Writes the golden files anew. Read the difference like code before you commit it.
import { join } from 'node:path';
import { root, run } from './setup.mjs';

process.exit(
  run(
    [
      join(root, 'node_modules/vitest/vitest.mjs'),
      'run',
      '--config',
      'tests/vitest.config.ts',
      'golden',
      'frames',
      'ten-minutes',
    ],
    {
      env: { GOLDEN: 'write' },
    },
  ),
);
