import { spawnSync } from 'node:child_process';
import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { bundlePrograms } from '../../../build/bundle-programs';
import { projectFolder } from '../../../build/run-command';
import { temporaryFolder } from '../../support/temporary-folder';

/** A network namespace has no way out, and not even its own loopback is up (Linux, namespaces(7)). */
const inNamespace = ['unshare', '--user', '--map-root-user', '--net'];
const [command = '', ...words] = inNamespace;
// A machine may forbid it to everybody (a container without leave, another system): then it is skipped, and said.
const missing = spawnSync(command, [...words, 'true']).status !== 0;
if (missing) console.warn('SKIPPED: this machine lets nobody make a namespace without network');

describe.skipIf(missing)('without any network', () => {
  const bundle = join(projectFolder, 'dist/check/cli-without-network');
  beforeAll(() => bundlePrograms(projectFolder, bundle, ['cli']));

  it('the namespace is one: nothing can be reached in it', () => {
    const reach = `require('node:net').connect(9, '127.0.0.1').on('error', ({ code }) => console.log(code))`;
    const { stdout } = spawnSync(command, [...words, process.execPath, '-e', reach], { encoding: 'utf8' });
    expect(stdout.trim()).toMatch(/ENETUNREACH|EADDRNOTAVAIL/);
  });

  it.each(['rain-gauge-contact-spring.dxf', 'letterbox-hinge-leaf.dxf'])(
    'does the whole job on %s',
    (sample) => {
      const folder = temporaryFolder();
      const job = [join(bundle, 'cli.cjs'), join(projectFolder, 'samples', sample), '--out'];
      const run = (out: string, [command = '', ...words]: readonly string[]) =>
        spawnSync(command, [...words, ...job, join(folder, out)], { encoding: 'utf8', cwd: folder });
      const without = run('without', [...inNamespace, process.execPath]);
      const withNetwork = run('with', [process.execPath]);
      expect(without.stderr).toBe('');
      expect(without.status).toBe(withNetwork.status);
      expect(readdirSync(join(folder, 'without'))).toEqual(readdirSync(join(folder, 'with')));
      expect(readdirSync(join(folder, 'without')).some((name) => name.endsWith('.pdf'))).toBe(true);
    },
  );
});
