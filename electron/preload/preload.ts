import { contextBridge, ipcRenderer } from 'electron';
import { hostChannels, hostGlobalName } from '../contract/channels';
import type { HostApi } from '../contract/host-api';

const api: HostApi = {
  kind: 'desktop',
  openedAtStart: () => ipcRenderer.invoke(hostChannels.openedAtStart) as ReturnType<HostApi['openedAtStart']>,
  chooseFile: () => ipcRenderer.invoke(hostChannels.chooseFile) as ReturnType<HostApi['chooseFile']>,
  saveJob: (request) => ipcRenderer.invoke(hostChannels.saveJob, request) as ReturnType<HostApi['saveJob']>,
  saveOwnFile: (request) =>
    ipcRenderer.invoke(hostChannels.saveOwnFile, request) as ReturnType<HostApi['saveOwnFile']>,
  keepDraft: (request) =>
    ipcRenderer.invoke(hostChannels.keepDraft, request) as ReturnType<HostApi['keepDraft']>,
  leftOver: () => ipcRenderer.invoke(hostChannels.leftOver) as ReturnType<HostApi['leftOver']>,
  dropDraft: (id) => ipcRenderer.invoke(hostChannels.dropDraft, { id }) as ReturnType<HostApi['dropDraft']>,
  exportFiles: (request) =>
    ipcRenderer.invoke(hostChannels.exportFiles, request) as ReturnType<HostApi['exportFiles']>,
};

contextBridge.exposeInMainWorld(hostGlobalName, api);
