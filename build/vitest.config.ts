import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

const top = fileURLToPath(new URL('..', import.meta.url));

// Read as a module, as the bundles read it: its CommonJS build has other export names.
// Unsaved work of tests stays out of the developer's own.
const env = { DIEWRIGHT_STATE: join(tmpdir(), 'diewright-test-state') };
const server = { deps: { inline: ['dxf-parser'] } };
const resolve = { mainFields: ['module', 'main'] };

// Two projects: everything that runs in Node, and the tests that drive the real window in a browser.
export default defineConfig({
  root: top,
  test: {
    // By itself it leaves one processor free: on two that is half the speed.
    maxWorkers: 2,
    projects: [
      {
        root: top,
        resolve,
        ssr: { resolve },
        test: {
          name: 'unit',
          env,
          include: ['tests/**/*.test.{ts,tsx}'],
          exclude: ['tests/desktop/**'],
          testTimeout: 60_000,
          server,
        },
      },
      {
        root: top,
        resolve,
        ssr: { resolve },
        test: {
          name: 'desktop',
          env,
          include: ['tests/desktop/**/*.test.ts'],
          testTimeout: 120_000,
          hookTimeout: 120_000,
          fileParallelism: false,
          server,
        },
      },
    ],
  },
});
