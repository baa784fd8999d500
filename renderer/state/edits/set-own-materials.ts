import type { OwnMaterial } from '../../../core/die/own-material';
import type { JobEdit } from '../job-edit';

export interface OwnMaterialsChange {
  readonly say: string;
  readonly materials: readonly OwnMaterial[];
}

/** The materials that the user added to the stock table. The stock keeps its id: a job without it says so. */
export const setOwnMaterials: JobEdit<OwnMaterialsChange> = {
  id: 'set-own-materials',
  undo: 'merge',
  part: ({ say }) => say,
  label: ({ say }) => say,
  apply: (job, { materials }) => ({ ...job, ownMaterials: [...materials] }),
};
