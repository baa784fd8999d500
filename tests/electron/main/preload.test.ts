import { readFileSync } from 'node:fs';
import { expect, test, vi } from 'vitest';
import { hostChannels } from '../../../electron/contract/channels';
import type { HostApi } from '../../../electron/contract/host-api';

const { expose, invoke } = vi.hoisted(() => ({
  expose: vi.fn(),
  invoke: vi.fn(() => Promise.resolve(null)),
}));
vi.mock('electron', () => ({ contextBridge: { exposeInMainWorld: expose }, ipcRenderer: { invoke } }));

test('gives the page the host interface and nothing else', async () => {
  await import('../../../electron/preload/preload');
  expect(expose).toHaveBeenCalledTimes(1);
  const [name, api] = expose.mock.calls[0] as [string, HostApi];
  expect(name).toBe('diewrightHost');
  expect(Object.keys(api).sort()).toEqual([...Object.keys(hostChannels), 'kind'].sort());

  const request = { token: null, suggestedName: 'a', text: 'b', replaceChanged: false };
  await api.saveJob(request);
  expect(invoke).toHaveBeenLastCalledWith(hostChannels.saveJob, request);
  await api.openedAtStart();
  expect(invoke).toHaveBeenLastCalledWith(hostChannels.openedAtStart);
});

test('stays thin', () => {
  const lines = readFileSync(new URL('../../../electron/preload/preload.ts', import.meta.url), 'utf8').split(
    '\n',
  );
  expect(lines.length).toBeLessThanOrEqual(60);
});
