import { stockMaterials } from '../../core/die/stock-materials';
import { materialOf, ownMaterialsOf, type Job } from '../../core/job';
import { Choice } from '../controls/choice';
import { setMaterial } from '../state/edits/set-material';
import { editJob } from '../state/job-edit';
import { useApp } from '../state/use-app';

/** The stock's material, chosen from the stock table. */
export function MaterialValue({ job }: { job: Job }) {
  const app = useApp();
  return (
    <Choice
      label="Stock material"
      value={job.stock.material}
      // A job made elsewhere may name a material that the table does not have.
      text={materialOf(job)?.name ?? `unknown material "${job.stock.material}"`}
      options={[...ownMaterialsOf(job), ...stockMaterials].map(({ id, name, clearance }) => ({
        value: id,
        name,
        aside: `${Number((clearance.value * 100).toFixed(2))} % per side`,
      }))}
      onChoose={(material) => editJob(app, setMaterial, material)}
    />
  );
}
