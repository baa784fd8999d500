import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { pageFile } from '../../../electron/services/page-file';
import { temporaryFolder } from '../../support/temporary-folder';

function builtPage(): string {
  const folder = temporaryFolder();
  mkdirSync(join(folder, 'window', 'assets'), { recursive: true });
  writeFileSync(join(folder, 'window', 'index.html'), '<head></head>');
  writeFileSync(join(folder, 'window', 'assets', 'app-1a.js'), 'let a;');
  writeFileSync(join(folder, 'window', '.hidden.js'), 'let b;');
  writeFileSync(join(folder, 'secret.json'), '{}');
  return join(folder, 'window');
}

test('gives the page and what belongs to it, with its type', async () => {
  const folder = builtPage();
  expect(await pageFile(folder, '/')).toMatchObject({ contentType: 'text/html; charset=utf-8' });
  expect(await pageFile(folder, '/index.html')).not.toBeNull();
  expect(await pageFile(folder, '/assets/app-1a.js')).toMatchObject({
    contentType: 'text/javascript; charset=utf-8',
    bytes: new Uint8Array(Buffer.from('let a;')),
  });
});

test.each([
  '/../secret.json',
  '/%2e%2e/secret.json',
  '/..%2fsecret.json',
  '/assets/../../secret.json',
  '/assets/..%5c..%5csecret.json',
  '//secret.json',
  '/.hidden.js',
  '/assets',
  '/none.js',
  '/%00.js',
  '/%zz.js',
  '',
])('%j leads nowhere', async (path) => {
  expect(await pageFile(builtPage(), path)).toBeNull();
});
