/** The channels between the desktop shell's page and its main process: one for each call of the host interface. */
export const hostChannels = {
  openedAtStart: 'host:opened-at-start',
  chooseFile: 'host:choose-file',
  saveJob: 'host:save-job',
  saveOwnFile: 'host:save-own-file',
  keepDraft: 'host:keep-draft',
  leftOver: 'host:left-over',
  dropDraft: 'host:drop-draft',
  exportFiles: 'host:export-files',
} as const;

export type HostChannel = (typeof hostChannels)[keyof typeof hostChannels];

/** The name under which the preload script puts the host interface on the page's `window`. */
export const hostGlobalName = 'diewrightHost';
