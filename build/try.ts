import { join } from 'node:path';
import { hasDisplay } from '../electron/local-window/open-app-window';
import { electronBinary, openWindow, serveInBackground } from './open-window';
import { projectFolder, runNode } from './run-command';

/**
 * `npm run try`: the whole job on a sample drawing, its files in out/, then the window on that job. The command ends
 * with 2 where findings are open, which the sample means to show; anything else but 0 is a failure.
 */
const sample = 'samples/rain-gauge-contact-spring.dxf';
const out = 'out';
const job = join(out, 'rain-gauge-contact-spring.diewright.json');

const built = await runNode(['build/run-typescript.mjs', 'build/build.ts']);
process.exitCode = built === 0 ? await tryOut() : built;

async function tryOut(): Promise<number> {
  const stock = ['--material', 'brass', '--thickness', '0.2mm'];
  const code = await runNode(['dist/electron/cli.cjs', sample, '--out', out, ...stock]);
  if (code !== 0 && code !== 2) return code;
  const file = join(projectFolder, job);
  if (hasDisplay()) return openWindow([file], electronBinary());
  const { says, pid } = await serveInBackground([file]);
  console.log('This machine has no display for the window.');
  console.log(says);
  console.log(`Once opened it stays until process ${pid} is ended.`);
  return 0;
}
