import { spawn } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, onTestFinished, test } from 'vitest';
import { bundlePrograms } from '../../../build/bundle-programs';
import { temporaryFolder } from '../../support/temporary-folder';
import { httpCall } from '../support/http-call';

const top = fileURLToPath(new URL('../../..', import.meta.url));

/** The bundled program beside a page of one file. */
async function builtProgram() {
  const folder = temporaryFolder();
  await bundlePrograms(top, join(folder, 'electron'), ['local-window']);
  mkdirSync(join(folder, 'window'));
  writeFileSync(join(folder, 'window/index.html'), '<head></head>');
  return { folder, program: join(folder, 'electron/local-window.cjs') };
}

function start(folder: string, program: string, args: readonly string[], environment: NodeJS.ProcessEnv) {
  const child = spawn(process.execPath, [program, ...args], {
    cwd: folder,
    env: { PATH: process.env['PATH'], ...environment },
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  onTestFinished(() => void child.kill());
  let said = '';
  child.stdout.on('data', (text: Buffer) => (said += text.toString()));
  const ended = new Promise<number | null>((resolve) => child.once('exit', resolve));
  return { child, ended, said: () => said };
}

test('without a display it prints the address, serves it, and ends when nobody comes', async () => {
  const { folder, program } = await builtProgram();
  const { ended, said } = start(folder, program, ['--wait-minutes', '0.05'], {});
  await expect.poll(said, { timeout: 20_000 }).toMatch(/http:\/\/127\.0\.0\.1:\d+\/\?token=[0-9a-f]{32}\n/);
  const address = new URL(/http\S+/.exec(said())?.[0] ?? '');
  expect((await httpCall(address.origin, '/')).status).toBe(403);
  expect(await ended).toBe(0);
});

test('somebody who has opened the address in time keeps the program running', async () => {
  const { folder, program } = await builtProgram();
  const { child, ended, said } = start(folder, program, ['--wait-minutes', '0.03'], {});
  await expect.poll(said, { timeout: 20_000 }).toContain('token=');
  const address = new URL(/http\S+/.exec(said())?.[0] ?? '');
  expect((await httpCall(address.origin, address.pathname + address.search)).status).toBe(303);
  await new Promise((resolve) => setTimeout(resolve, 3000));
  expect((await httpCall(address.origin, '/')).status).toBe(403);
  child.kill();
  await ended;
});

/** A stand-in for the browser that notes how it was called. */
function standInBrowser(folder: string, does: 'opens' | 'fails' | 'stays'): string {
  const path = join(folder, 'browser');
  const text = [
    '#!/usr/bin/env node',
    "require('node:fs').writeFileSync('asked', process.argv.slice(2).join('\\n'));",
    {
      opens: "fetch(process.argv[2].replace('--app=', ''), { redirect: 'manual' });",
      fails: 'process.exit(1);',
      stays: 'setInterval(() => undefined, 1000);',
    }[does],
  ];
  writeFileSync(path, text.join('\n'), { mode: 0o755 });
  return path;
}

test.skipIf(process.platform === 'win32')(
  'opens an app window with a profile of its own and ends with it',
  async () => {
    const { folder, program } = await builtProgram();
    const browser = standInBrowser(folder, 'opens');
    const { ended, said } = start(folder, program, [], { DISPLAY: ':99', DIEWRIGHT_BROWSER: browser });
    expect(await ended).toBe(0);
    expect(said()).toBe('');
    const asked = readFileSync(join(folder, 'asked'), 'utf8').split('\n');
    expect(asked[0]).toMatch(/^--app=http:\/\/127\.0\.0\.1:\d+\/\?token=[0-9a-f]{32}$/);
    const profile = asked[1]?.replace('--user-data-dir=', '') ?? '';
    expect(profile).toContain('diewright-window-');
    expect(existsSync(profile)).toBe(false);
    // Only root, who cannot run the browser otherwise, goes without its sandbox.
    expect(asked.includes('--no-sandbox')).toBe(process.getuid?.() === 0);
  },
);

test.skipIf(process.platform === 'win32')(
  'a browser that does not start leaves the address to be opened by hand',
  async () => {
    const { folder, program } = await builtProgram();
    const browser = standInBrowser(folder, 'fails');
    const wait = ['--wait-minutes', '0.01'];
    const { ended, said } = start(folder, program, wait, { DISPLAY: ':99', DIEWRIGHT_BROWSER: browser });
    expect(await ended).toBe(0);
    expect(said()).toContain(browser);
    expect(said()).toMatch(/http:\/\/127\.0\.0\.1:\d+\/\?token=/);
  },
);

test.skipIf(process.platform === 'win32')('a signal ends the browser and the program', async () => {
  const { folder, program } = await builtProgram();
  const browser = standInBrowser(folder, 'stays');
  const { child, ended } = start(folder, program, [], { DISPLAY: ':99', DIEWRIGHT_BROWSER: browser });
  await expect.poll(() => existsSync(join(folder, 'asked')), { timeout: 20_000 }).toBe(true);
  child.kill('SIGTERM');
  await ended;
  expect(child.signalCode).toBe('SIGTERM');
  await expect
    .poll(() => readFileSync(join(folder, 'asked'), 'utf8').split('\n')[1]?.replace('--user-data-dir=', ''))
    .toSatisfy((profile: string) => !existsSync(profile));
});
