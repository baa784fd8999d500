import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { onTestFinished } from 'vitest';
import { serveLocalWindow, type LocalWindowOptions } from '../../../electron/local-window/serve-local-window';
import { temporaryFolder } from '../../support/temporary-folder';
import { httpCall, type HttpReply } from './http-call';

/** A local window on a page of two files, its token exchanged as a browser would. */
export async function openedLocalWindow(more: Partial<LocalWindowOptions> = {}) {
  const folder = temporaryFolder();
  const pageFolder = join(folder, 'page');
  mkdirSync(join(pageFolder, 'assets'), { recursive: true });
  writeFileSync(join(pageFolder, 'index.html'), '<!doctype html><html><head><title>x</title></head></html>');
  writeFileSync(join(pageFolder, 'assets/app.js'), 'let a;');
  writeFileSync(join(folder, 'secret.json'), '{"secret": true}');
  const outFolder = join(folder, 'out');

  const draftFolder = join(folder, 'drafts');

  const window = await serveLocalWindow({ pageFolder, outFolder, draftFolder, openPath: null, ...more });
  onTestFinished(() => window.close());
  const path = window.address.slice(window.origin.length);
  const first = await httpCall(window.origin, path);
  const cookie = String(first.headers['set-cookie']).split(';')[0] ?? '';

  const call = (
    route: string,
    body: unknown,
    headers: Record<string, string> = {},
    method = 'POST',
  ): Promise<HttpReply> =>
    httpCall(window.origin, route, {
      method,
      headers: { cookie, origin: window.origin, 'content-type': 'application/json', ...headers },
      body: typeof body === 'string' ? body : JSON.stringify(body),
    });

  return { folder, outFolder, window, path, first, cookie, call };
}
