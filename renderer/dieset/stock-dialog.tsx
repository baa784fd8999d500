import { FolderOpen, Plus, Save, Trash2 } from 'lucide-react';
import { nextOwnId, type OwnMaterial } from '../../core/die/own-material';
import { stockMaterials, type StockMaterial } from '../../core/die/stock-materials';
import { saySource, type Sourced } from '../../core/die/sourced';
import { sayProblem } from '../../core/problem';
import { formatQuantity } from '../../core/quantities';
import { shortNumber } from '../../core/say';
import { DialogFrame } from '../controls/dialog-frame';
import { jobOf } from '../state/app-state';
import { setMaterial } from '../state/edits/set-material';
import { setOwnMaterials } from '../state/edits/set-own-materials';
import { editJob } from '../state/job-edit';
import { openOwnFile, saveMaterials } from '../state/own-files';
import { useApp, useAppState } from '../state/use-app';
import { OwnMaterialRow } from './own-material-row';

/** The stock table: every material with its numbers and their sources, and the user's own ones. */
export function StockDialog() {
  const app = useApp();
  const job = useAppState(jobOf);
  const trouble = useAppState((state) => state.trouble);
  const said = useAppState((state) => state.said);
  const close = () => app.store.setState({ dialog: null });
  if (!job) return null;
  const own = job.ownMaterials;
  const change = (materials: readonly OwnMaterial[], say: string, turning = false) =>
    editJob(app, setOwnMaterials, { materials, say }, turning);
  return (
    <DialogFrame title="Stock table" onClose={close} isWide>
      <div className="technology-rows">
        <table className="table" aria-label="Stock materials">
          <thead>
            <tr>
              <th scope="col">Material</th>
              <th scope="col">Kind</th>
              <th scope="col">Clearance per side</th>
              <th scope="col">Shear strength</th>
              <th scope="col">Tensile strength</th>
              <th scope="col">
                <span className="unseen">Use or take out</span>
              </th>
            </tr>
          </thead>
          <tbody>
            {own.map((material, k) => (
              <OwnMaterialRow
                key={material.id}
                material={material}
                isUsed={job.stock.material === material.id}
                onChange={(next, turning) =>
                  change(
                    own.map((one, i) => (i === k ? next : one)),
                    `Material ${next.name}`,
                    turning,
                  )
                }
              >
                <UseButton
                  id={material.id}
                  name={material.name}
                  isUsed={job.stock.material === material.id}
                />
                <button
                  type="button"
                  className="icon-button"
                  aria-label={`Take out ${material.name}`}
                  onClick={() =>
                    change(
                      own.filter((_, i) => i !== k),
                      `Take out ${material.name}`,
                    )
                  }
                >
                  <Trash2 aria-hidden="true" />
                </button>
              </OwnMaterialRow>
            ))}
            {stockMaterials.map((material) => (
              <ShippedRow key={material.id} material={material} isUsed={job.stock.material === material.id} />
            ))}
          </tbody>
        </table>
      </div>
      {trouble && (
        <p className="technology-problem" role="alert">
          {sayProblem(trouble)}
        </p>
      )}
      <p className="panel-note">
        Starting values, to be settled by the responsible tool engineer. “From memory” means that the book was
        not at hand when the number was entered.
      </p>
      <div className="dialog-buttons">
        <button
          type="button"
          className="button"
          onClick={() => change([...own, newMaterial(own)], 'Add a material')}
        >
          <Plus aria-hidden="true" />
          Add a material
        </button>
        <button type="button" className="button" onClick={() => void openOwnFile(app, 'materials')}>
          <FolderOpen aria-hidden="true" />
          Open a materials file…
        </button>
        {own.length > 0 && (
          <button type="button" className="button" onClick={() => void saveMaterials(app)}>
            <Save aria-hidden="true" />
            Save own materials…
          </button>
        )}
        <span className="technology-said" role="status" aria-label="Done last">
          {said}
        </span>
        <button type="button" className="button button-strong" onClick={close}>
          Done
        </button>
      </div>
    </DialogFrame>
  );
}

/** 6 % per side: the middle of what is usual. */
const newMaterial = (own: readonly OwnMaterial[]): OwnMaterial => ({
  id: nextOwnId(own),
  name: `own material ${own.length + 1}`,
  family: null,
  clearance: 0.06,
  shearStrength: null,
  tensileStrength: null,
  source: '',
});

function UseButton({ id, name, isUsed }: { id: string; name: string; isUsed: boolean }) {
  const app = useApp();
  return isUsed ? (
    <span className="panel-note">in use</span>
  ) : (
    <button
      type="button"
      className="button button-small"
      aria-label={`Use ${name}`}
      onClick={() => editJob(app, setMaterial, id)}
    >
      Use
    </button>
  );
}

function ShippedRow({ material, isUsed }: { material: StockMaterial; isUsed: boolean }) {
  const unit = useAppState((state) => state.unit);
  const { id, name, family, clearance, shearStrength, tensileStrength } = material;
  const strength = (of: Sourced | null) => (
    <SourcedCell of={of} say={(value) => formatQuantity(value, 'stress', unit)} />
  );
  return (
    <tr aria-current={isUsed}>
      <th scope="row">{name}</th>
      <td>{family ?? '–'}</td>
      <SourcedCell of={clearance} say={(value) => `${shortNumber(100 * value)} %`} />
      {strength(shearStrength)}
      {strength(tensileStrength)}
      <td>
        <UseButton id={id} name={name} isUsed={isUsed} />
      </td>
    </tr>
  );
}

function SourcedCell({ of, say }: { of: Sourced | null; say: (value: number) => string }) {
  return (
    <td className="sourced">
      {of ? (
        <>
          {say(of.value)}
          <span className="fact-source">{saySource(of)}</span>
        </>
      ) : (
        '–'
      )}
    </td>
  );
}
