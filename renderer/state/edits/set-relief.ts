import type { ReliefSettings } from '../../../core/die/relief-rules';
import { formatLength } from '../../../core/units';
import type { JobEdit } from '../job-edit';

export type ReliefChange = Partial<ReliefSettings>;

/** How the die opening widens below its cutting edge, and what the control can do of it. */
export const setRelief: JobEdit<ReliefChange> = {
  id: 'set-relief',
  undo: 'merge',
  part: (change) => Object.keys(change).join(),
  label: (change, job) => {
    const length = (mm: number) => formatLength(mm, job.output.unit);
    if (change.kind !== undefined) return kindNames[change.kind];
    if (change.angleDeg !== undefined) return `Relief ${change.angleDeg}°`;
    if (change.land !== undefined) return `Land ${length(change.land)}`;
    if (change.corners !== undefined) return `Relief with ${change.corners} corners`;
    if (change.arcs !== undefined) return `Leaning arcs as ${change.arcs === 'chords' ? 'chords' : 'arcs'}`;
    if (change.chordTolerance !== undefined) return `Chords within ${length(change.chordTolerance)}`;
    return `Regrinds of ${length(change.perGrind ?? 0)}`;
  },
  apply: (job, change) => ({ ...job, relief: { ...job.relief, ...change } }),
};

const kindNames: Readonly<Record<ReliefSettings['kind'], string>> = {
  none: 'Straight die opening',
  'one tapered cut': 'Die opening tapered in one',
  'land and relief': 'Land and relief',
};
