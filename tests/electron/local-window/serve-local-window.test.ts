import { expect, test, vi } from 'vitest';
import { httpCall } from '../support/http-call';
import { openedLocalWindow } from '../support/opened-local-window';

const saved = '/host/save-job';
const request = { token: null, suggestedName: 'bell', text: '{}' };

test('the token is good once, and its cookie is kept from scripts and other sites', async () => {
  const onOpened = vi.fn();
  const { window, path, first, cookie } = await openedLocalWindow({ onOpened });
  // 128 bits are 32 hex digits.
  expect(path).toMatch(/^\/\?token=[0-9a-f]{32}$/);
  expect(first.status).toBe(303);
  expect(first.headers['location']).toBe('/');
  expect(String(first.headers['set-cookie'])).toMatch(/=[0-9a-f]{32}; HttpOnly; SameSite=Strict; Path=\/$/);

  const again = await httpCall(window.origin, path);
  expect(again.status).toBe(403);
  expect(again.headers['set-cookie']).toBeUndefined();
  expect((await httpCall(window.origin, path, { headers: { cookie } })).status).toBe(303);
  expect(onOpened).toHaveBeenCalledTimes(1);
});

test('a wrong token gets nothing and does not use up the right one', async () => {
  const { window, cookie } = await openedLocalWindow();
  expect((await httpCall(window.origin, `/?token=${'0'.repeat(32)}`)).status).toBe(403);
  expect((await httpCall(window.origin, '/', { headers: { cookie } })).status).toBe(200);
});

test('nothing is answered without the cookie', async () => {
  const { window, cookie } = await openedLocalWindow();
  const name = cookie.split('=')[0] ?? '';
  for (const headers of [{}, { cookie: `${name}=` }, { cookie: `${name}=${'0'.repeat(32)}` }]) {
    expect((await httpCall(window.origin, '/', { headers })).status).toBe(403);
    expect((await httpCall(window.origin, '/assets/app.js', { headers })).status).toBe(403);
  }
});

test('serves the page with its policy and the mark of this host', async () => {
  const { window, cookie } = await openedLocalWindow();
  const page = await httpCall(window.origin, '/', { headers: { cookie } });
  expect(page.body).toContain('<meta name="diewright-host" content="local window" />');
  expect(page.headers['content-security-policy']).toContain("default-src 'none'");
  expect(page.headers['content-security-policy']).toContain("script-src 'self'");
  expect(page.headers['x-content-type-options']).toBe('nosniff');
  const script = await httpCall(window.origin, '/assets/app.js', { headers: { cookie } });
  expect(script).toMatchObject({ status: 200, body: 'let a;' });
  expect(script.headers['content-type']).toBe('text/javascript; charset=utf-8');
});

test('only the very Host header of the address is answered', async () => {
  const { window, cookie } = await openedLocalWindow();
  const port = new URL(window.origin).port;
  for (const host of [
    `localhost:${port}`,
    `attacker.example:${port}`,
    '127.0.0.1',
    `127.0.0.1:${Number(port) + 1}`,
  ]) {
    expect((await httpCall(window.origin, '/', { headers: { cookie, host } })).status).toBe(403);
  }
});

test('a call needs the Origin of the page', async () => {
  const { call, window, cookie } = await openedLocalWindow();
  expect((await call(saved, request)).status).toBe(200);
  for (const origin of [
    'https://attacker.example',
    'null',
    'http://127.0.0.1',
    window.origin.replace('http', 'https'),
  ]) {
    expect((await call(saved, request, { origin })).status).toBe(403);
  }
  const headers = { cookie, 'content-type': 'application/json' };
  const none = await httpCall(window.origin, saved, { method: 'POST', headers, body: '{}' });
  expect(none.status).toBe(403);
});

test.each([
  '/../secret.json',
  '/%2e%2e/secret.json',
  '/assets/..%2f..%2fsecret.json',
  '//secret.json',
  '/host/save-job',
])('GET %s gives no file', async (path) => {
  const { window, cookie } = await openedLocalWindow();
  const reply = await httpCall(window.origin, path, { headers: { cookie } });
  expect(reply.status).toBe(404);
  expect(reply.body).not.toContain('"secret"');
});

test('other methods, calls and bodies are refused', async () => {
  const { call } = await openedLocalWindow();
  expect((await call(saved, request, {}, 'PUT')).status).toBe(405);
  expect((await call('/host/read-anything', {})).status).toBe(404);
  expect((await call(saved, '{"token"')).status).toBe(400);
  expect((await call(saved, request, { 'content-type': 'text/plain' })).status).toBe(400);
});

test('a body over the limit is refused, announced or not', async () => {
  const { call } = await openedLocalWindow({ largestBody: 1000 });
  const long = { ...request, text: 'x'.repeat(2000) };
  expect((await call(saved, long)).status).toBe(413);
  expect((await call(saved, long, { 'transfer-encoding': 'chunked' })).status).toBe(413);
  expect((await call(saved, { ...request, text: 'x'.repeat(100) })).status).toBe(200);
});
