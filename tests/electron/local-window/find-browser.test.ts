import { chmodSync, mkdirSync, writeFileSync } from 'node:fs';
import { delimiter, join } from 'node:path';
import { expect, test } from 'vitest';
import { findBrowser } from '../../../electron/local-window/find-browser';
import { hasDisplay } from '../../../electron/local-window/open-app-window';
import { temporaryFolder } from '../../support/temporary-folder';

function program(folder: string, name: string, mode = 0o755): string {
  mkdirSync(folder, { recursive: true });
  writeFileSync(join(folder, name), '#!/bin/sh\n');
  chmodSync(join(folder, name), mode);
  return join(folder, name);
}

test.skipIf(process.platform === 'win32')('finds what is on the path and can be run', () => {
  const folder = temporaryFolder();
  program(join(folder, 'a'), 'chromium', 0o644);
  const chrome = program(join(folder, 'b'), 'google-chrome');
  const PATH = [join(folder, 'a'), join(folder, 'b')].join(delimiter);
  expect(findBrowser({ PATH }, 'linux')).toBe(chrome);
});

test('a browser named outright is taken or none', () => {
  const folder = temporaryFolder();
  const mine = program(folder, 'mine');
  program(folder, 'chromium');
  expect(findBrowser({ PATH: folder, DIEWRIGHT_BROWSER: mine }, 'linux')).toBe(mine);
  expect(findBrowser({ PATH: folder, DIEWRIGHT_BROWSER: join(folder, 'none') }, 'linux')).toBeNull();
});

test('a display is known by its variables on Linux and taken for granted elsewhere', () => {
  expect(hasDisplay({}, 'linux')).toBe(false);
  expect(hasDisplay({ DISPLAY: '' }, 'linux')).toBe(false);
  expect(hasDisplay({ DISPLAY: ':0' }, 'linux')).toBe(true);
  expect(hasDisplay({ WAYLAND_DISPLAY: 'wayland-0' }, 'linux')).toBe(true);
  expect(hasDisplay({}, 'win32')).toBe(true);
});
