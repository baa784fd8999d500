import { stockMaterial } from '../../../core/die/stock-materials';
import { ownMaterialsOf } from '../../../core/job';
import type { JobEdit } from '../job-edit';

/** The stock's material, by its id in the stock table. */
export const setMaterial: JobEdit<string> = {
  id: 'set-material',
  undo: 'step',
  label: (material, job) => `Stock of ${stockMaterial(material, ownMaterialsOf(job))?.name ?? material}`,
  apply: (job, material) => ({ ...job, stock: { ...job.stock, material } }),
};
