import { saySource, type Sourced } from '../../core/die/sourced';
import { materialOf, type Job } from '../../core/job';
import { formatQuantity } from '../../core/quantities';
import { shortNumber } from '../../core/say';
import { Part } from '../drawing/part';
import { useApp, useAppState } from '../state/use-app';
import { Fact, Facts } from './fact';

/** The stock's numbers, each with its source, and what the chosen clearance does to the edge. */
export function StockPart({ job }: { job: Job }) {
  const { store } = useApp();
  const clearance = useAppState((state) => state.made?.plan.clearance ?? null);
  const material = materialOf(job);
  return (
    <Part title="Stock" aside={material?.name ?? `unknown material "${job.stock.material}"`}>
      {material && (
        <Facts label="Stock">
          <Fact label="Clearance per side" source={saySource(material.clearance)}>
            {shortNumber(100 * material.clearance.value)} % of the thickness
          </Fact>
          <Strength label="Shear strength" strength={material.shearStrength} />
          <Strength label="Tensile strength" strength={material.tensileStrength} />
        </Facts>
      )}
      {clearance && <p className="part-line">{clearance.effect}</p>}
      <p className="part-line">
        <button
          type="button"
          className="button button-small"
          onClick={() => store.setState({ dialog: 'stock' })}
        >
          Stock table…
        </button>
      </p>
    </Part>
  );
}

function Strength({ label, strength }: { label: string; strength: Sourced | null }) {
  const unit = useAppState((state) => state.unit);
  return strength ? (
    <Fact label={label} source={saySource(strength)}>
      {formatQuantity(strength.value, 'stress', unit)}
    </Fact>
  ) : (
    <Fact label={label} source="no number for all that this row spans">
      not known
    </Fact>
  );
}
