import { resolve } from 'node:path';
import { defineConfig } from 'vitest/config';

// Clock zone, locale and colour are pinned so that a frame is the same everywhere.
export default defineConfig({
  root: resolve(import.meta.dirname, '..'),
  test: {
    include: ['tests/**/*.test.{ts,tsx}'],
    env: { TZ: 'UTC', LANG: 'C.UTF-8', FORCE_COLOR: '0' },
    testTimeout: 30_000,
    hookTimeout: 30_000,
    maxWorkers: 2,
    coverage: {
      provider: 'v8',
      include: ['src/**/*.{ts,tsx}'],
      reportsDirectory: 'coverage',
      reporter: ['text-summary'],
    },
  },
});
