import { hostGlobalName } from '../../electron/contract/channels';
import type { HostApi } from '../../electron/contract/host-api';
import { hostMetaName } from '../../electron/contract/local-window-protocol';
import { downloadHost } from './download-host';
import { localWindowHost } from './local-window-host';

declare global {
  interface Window {
    readonly [hostGlobalName]?: HostApi;
  }
}

/**
 * The page's one way to files: the desktop shell's preload interface, the local window's server, or, on a page that
 * nobody serves, the browser's own downloads.
 */
export function pickHost(page: Window): HostApi {
  const desktop = page[hostGlobalName];
  if (desktop) return desktop;
  const served = page.document.querySelector(`meta[name="${hostMetaName}"]`);
  return served ? localWindowHost(page) : downloadHost(page);
}
