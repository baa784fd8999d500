import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

const top = fileURLToPath(new URL('..', import.meta.url));

// Two projects: everything that runs in Node, and the tests that drive the real window in a browser.
export default defineConfig({
  root: top,
  test: {
    projects: [
      {
        root: top,
        test: {
          name: 'unit',
          include: ['tests/**/*.test.{ts,tsx}'],
          exclude: ['tests/desktop/**'],
          testTimeout: 60_000,
        },
      },
      {
        root: top,
        test: {
          name: 'desktop',
          include: ['tests/desktop/**/*.test.ts'],
          testTimeout: 120_000,
          hookTimeout: 120_000,
          fileParallelism: false,
        },
      },
    ],
  },
});
