import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { DebugLogger } from 'builder-util';
import { validateConfiguration } from 'app-builder-lib/out/util/config/config.js';
import { expect, test } from 'vitest';
import { iconPng, iconSvg } from '../../build/draw-icon';

const top = fileURLToPath(new URL('../..', import.meta.url));
const readJson = (path: string) => JSON.parse(readFileSync(`${top}${path}`, 'utf8'));
const config = readJson('build/electron-builder.json');
const manifest = readJson('package.json');

test('the packager accepts the configuration, and would not accept a wrong one', async () => {
  await validateConfiguration(config, new DebugLogger(false));
  await expect(validateConfiguration({ ...config, fuses: true }, new DebugLogger(false))).rejects.toThrow(
    'fuses',
  );
});

test('packs for Windows, macOS and Linux', () => {
  expect(config.win.target).toEqual(['nsis']);
  expect(config.mac.target).toEqual(['dmg']);
  expect(config.linux.target).toEqual(['AppImage', 'deb']);
});

test('opens jobs and drawings', () => {
  expect(config.fileAssociations.map(({ ext }: { ext: string }) => ext)).toEqual(['diewright.json', 'dxf']);
});

test('the packed shell can be used as nothing but this program', () => {
  expect(config.electronFuses).toMatchObject({
    runAsNode: false,
    enableNodeOptionsEnvironmentVariable: false,
    enableNodeCliInspectArguments: false,
    enableEmbeddedAsarIntegrityValidation: true,
    onlyLoadAppFromAsar: true,
  });
});

test('nothing that is bundled is packed a second time', () => {
  expect(manifest.dependencies).toBeUndefined();
  expect(config.files).toContain('!node_modules/**');
  expect(config.files).toContain(manifest.main);
});

test('the icon is the one that the script draws, large enough for every system', () => {
  const png = readFileSync(`${top}${config.icon}`);
  // PNG specification, 11.2.1: width and height stand at 16 and 20. macOS asks for 512 at least.
  expect(png.subarray(1, 4).toString('latin1')).toBe('PNG');
  expect([png.readUInt32BE(16), png.readUInt32BE(20)]).toEqual([1024, 1024]);
  expect(readFileSync(`${top}build/icon/icon.svg`, 'utf8')).toBe(iconSvg());
  expect(iconPng(16).subarray(0, 24).toString('hex')).toBe(
    '89504e470d0a1a0a0000000d494844520000001000000010',
  );
});

test('the lock file names no download address', () => {
  const lock = readFileSync(`${top}package-lock.json`, 'utf8');
  expect(lock).not.toContain('"resolved"');
  expect(lock).not.toMatch(/"https?:\/\/[^"]*\.tgz"/);
});

test('every script and every program named in the manifest is there', () => {
  for (const [name, command] of Object.entries(manifest.scripts as Record<string, string>)) {
    expect(command, name).not.toMatch(/&&|;|\|/);
    const entry = /run-typescript\.mjs (\S+)/.exec(command)?.[1];
    if (entry) expect(existsSync(`${top}${entry}`), `${name}: ${entry}`).toBe(true);
  }
});
