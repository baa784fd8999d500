import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';

const projectFolder = fileURLToPath(new URL('../../..', import.meta.url));

// A share of `npm run fuzz:saving`, in a real process with a real kill.
test.skipIf(process.platform === 'win32')(
  'a session killed at random moments loses at most 2 s of edits and never a saved file',
  () => {
    const run = spawnSync(process.execPath, ['build/run-typescript.mjs', 'build/fuzz/saving.ts', '6', '7'], {
      cwd: projectFolder,
      encoding: 'utf8',
    });
    expect(run.stdout).toContain('6 kills');
    expect(run.stdout).toContain(' 0 failed');
    expect(run.status).toBe(0);
  },
);
