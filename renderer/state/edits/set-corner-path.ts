import type { CornerRules } from '../../../core/die/corner-rules';
import type { JobEdit } from '../job-edit';

export type CornerPathChange = Partial<Pick<CornerRules, 'path' | 'miterLimit'>>;

/** How the wire runs round outside corners, and how far past them a sharp path may go. */
export const setCornerPath: JobEdit<CornerPathChange> = {
  id: 'set-corner-path',
  undo: 'merge',
  part: (change) => Object.keys(change).join(),
  label: ({ path }) =>
    path === undefined
      ? 'How far past corners'
      : path === 'sharp'
        ? 'Wire runs on past outside corners'
        : 'Wire rolls round outside corners',
  apply: (job, change) => ({ ...job, corners: { ...job.corners, ...change } }),
};
