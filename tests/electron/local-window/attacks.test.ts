import { symlinkSync, writeFileSync } from 'node:fs';
import { connect, type Socket } from 'node:net';
import { networkInterfaces } from 'node:os';
import { join } from 'node:path';
import { expect, onTestFinished, test } from 'vitest';
import { serveLocalWindow } from '../../../electron/local-window/serve-local-window';
import { httpCall } from '../support/http-call';
import { openedLocalWindow } from '../support/opened-local-window';

/** What a connection answers to raw text before it is closed by the other side. */
function answerTo(origin: string, text: string, hostname = '127.0.0.1'): Promise<string> {
  return new Promise((resolve, reject) => {
    const socket: Socket = connect(Number(new URL(origin).port), hostname);
    onTestFinished(() => void socket.destroy());
    let answer = '';
    socket.on('data', (part) => (answer += part.toString()));
    socket.on('close', () => resolve(answer));
    socket.on('error', reject);
    socket.write(text);
  });
}

test('a request that never ends is given up', async () => {
  const { window, cookie } = await openedLocalWindow({ patience: 100 });
  const { host } = new URL(window.origin);
  const half = `POST /host/save-job HTTP/1.1\r\nHost: ${host}\r\n`;
  expect(await answerTo(window.origin, half)).toContain('408');
  const body = `${half}Origin: ${window.origin}\r\nCookie: ${cookie}\r\nContent-Type: application/json\r\nContent-Length: 99\r\n\r\n{`;
  expect(await answerTo(window.origin, body)).toContain('408');
});

test('two Host headers, a missing one and broken requests are refused', async () => {
  const { window, cookie } = await openedLocalWindow();
  const { host } = new URL(window.origin);
  const get = (...headers: readonly string[]) =>
    answerTo(
      window.origin,
      ['GET / HTTP/1.1', ...headers, `Cookie: ${cookie}`, 'Connection: close', '', ''].join('\r\n'),
    );
  expect(await get(`Host: ${host}`)).toContain('200 OK');
  expect(await get(`Host: ${host}`, 'Host: attacker.example')).not.toContain('200 OK');
  expect(await get('Host: attacker.example', `Host: ${host}`)).not.toContain('200 OK');
  expect(await get()).not.toContain('200 OK');
  expect(await answerTo(window.origin, 'GET / HTTP/9.9\r\n\r\n')).not.toContain('200 OK');
  // Two lengths of one body hide a second request in the first.
  const smuggled = await get(`Host: ${host}`, 'Content-Length: 5', 'Transfer-Encoding: chunked');
  expect(smuggled).not.toContain('200 OK');
});

test('only this machine reaches it: no other address of the machine is listened on', async () => {
  const { window } = await openedLocalWindow();
  const others = Object.values(networkInterfaces())
    .flatMap((list) => list ?? [])
    .filter(({ address }) => address !== '127.0.0.1' && !address.startsWith('fe80'));
  for (const { address } of others)
    await expect(answerTo(window.origin, 'GET / HTTP/1.1\r\n\r\n', address)).rejects.toThrow(/^connect E/);
  expect(new URL(window.origin).hostname).toBe('127.0.0.1');
});

test('a link in the page folder that leads out of it gives nothing', async () => {
  const { folder, window, cookie } = await openedLocalWindow();
  writeFileSync(join(folder, 'outside.js'), 'secret');
  symlinkSync(join(folder, 'outside.js'), join(folder, 'page/assets/link.js'));
  const reply = await httpCall(window.origin, '/assets/link.js', { headers: { cookie } });
  expect(reply.status).toBe(404);
  expect(reply.body).not.toContain('secret');
});

test('nothing answers once it is closed, even on a connection that was open', async () => {
  const { folder, window } = await openedLocalWindow();
  const own = await serveLocalWindow({
    pageFolder: join(folder, 'page'),
    outFolder: join(folder, 'out2'),
    draftFolder: join(folder, 'drafts2'),
    openPath: null,
  });
  const { host } = new URL(own.origin);
  // Answered once, so that the connection is there when the window closes.
  const open = answerTo(own.origin, `GET / HTTP/1.1\r\nHost: ${host}\r\n\r\nGET / HTTP/1.1\r\n`);
  await httpCall(own.origin, '/');
  await own.close();
  expect((await open).match(/HTTP\/1.1 /g)).toHaveLength(1);
  await expect(httpCall(own.origin, '/')).rejects.toThrow(/ECONNREFUSED/);
  expect(own.origin).not.toBe(window.origin);
});

test('a cookie of one window opens no other', async () => {
  const first = await openedLocalWindow();
  const second = await openedLocalWindow();
  const reply = await httpCall(second.window.origin, '/', { headers: { cookie: first.cookie } });
  expect(reply.status).toBe(403);
});
