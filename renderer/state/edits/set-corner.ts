import type { CornerException } from '../../../core/die/corner-rules';
import { tolerance } from '../../../core/geometry/tolerance';
import type { CornerName } from '../app-state';
import { cornerRuleWords } from './set-corner-rule';
import type { JobEdit } from '../job-edit';

export interface CornerChange {
  readonly corner: CornerName;
  /** Null: by the rule for all again. */
  readonly change: Partial<Pick<CornerException, 'inside' | 'outside' | 'path'>>;
}

/** A choice for one corner against the rules for all. */
export const setCorner: JobEdit<CornerChange> = {
  id: 'set-corner',
  undo: 'merge',
  part: ({ corner, change }) => `${corner.contourId}/${corner.x}/${corner.y}/${Object.keys(change).join()}`,
  label: ({ change }, job) => {
    const { inside, outside, path } = change;
    if (inside) return `Inside corner ${cornerRuleWords(inside, job.output.unit)}`;
    if (outside) return `Outside corner ${cornerRuleWords(outside, job.output.unit)}`;
    return path
      ? `${path === 'sharp' ? 'Sharp' : 'Rolling'} path at a corner`
      : 'Corner by the rules for all';
  },
  apply: (job, { corner, change }) => {
    const { exceptions } = job.corners;
    const known = exceptions.find((exception) => isAt(exception, corner));
    const next = { ...(known ?? { ...corner, inside: null, outside: null, path: null }), ...change };
    const others = exceptions.filter((exception) => exception !== known);
    const isRule = next.inside === null && next.outside === null && next.path === null;
    return { ...job, corners: { ...job.corners, exceptions: isRule ? others : [...others, next] } };
  },
};

/** Whether a stored choice is the one for a corner. */
export const isAt = (exception: CornerException, { contourId, x, y }: CornerName): boolean =>
  exception.contourId === contourId && Math.hypot(exception.x - x, exception.y - y) <= tolerance.cornerPlace;
