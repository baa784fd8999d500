import type { SetupSettings } from '../../../core/cut-settings';
import type { JobEdit } from '../job-edit';

export type SetupChange = Partial<SetupSettings>;

/** Blocks, frame, clamps and the order of work. */
export const setSetup: JobEdit<SetupChange> = {
  id: 'set-setup',
  undo: 'merge',
  part: (change) => Object.keys(change).join(),
  label: (change) => {
    const key = (Object.keys(change) as (keyof SetupSettings)[])[0] ?? 'frame';
    return names[key];
  },
  apply: (job, change) => ({ ...job, setup: { ...job.setup, ...change } }),
};

const names: Readonly<Record<keyof SetupSettings, string>> = {
  dies: 'Blocks of the dies',
  punches: 'Blocks of the punches',
  frame: 'Frame of the blocks',
  clamps: 'Clamp zones',
  sequence: 'Order of work',
  outlines: 'Size of a block',
};
