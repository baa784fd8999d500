import type { RepairSwitch } from '../../../core/drawing/drawing';
import { repairNames } from '../repair-names';
import type { JobEdit } from '../job-edit';

export interface RepairChoice {
  readonly kind: RepairSwitch;
  readonly isOn: boolean;
}

/** Whether a kind of repair is made. */
export const switchRepair: JobEdit<RepairChoice> = {
  id: 'switch-repair',
  undo: 'step',
  label: ({ kind, isOn }) => `${repairNames[kind]}: ${isOn ? 'put right' : 'left as drawn'}`,
  apply: (job, { kind, isOn }) => {
    const others = job.drawing.repairsOff.filter((other) => other !== kind);
    return { ...job, drawing: { ...job.drawing, repairsOff: isOn ? others : [...others, kind] } };
  },
};
