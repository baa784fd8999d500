import type { Dimension, Drawing } from '../../core/drawing/drawing';
import type { Job } from '../../core/job';
import { formatLength, formatLengthNumber, type DisplayUnit } from '../../core/units';
import { setSizeShift } from '../state/edits/set-size-shift';
import { editJob } from '../state/job-edit';
import { hoverTarget } from '../state/select-target';
import { useApp, useAppState } from '../state/use-app';
import { Part } from './part';

type Toleranced = Dimension & {
  readonly tolerance: NonNullable<Dimension['tolerance']>;
  readonly contourId: string;
};

/** The stated tolerances, each with the size shift that puts its contour into the middle of it. */
export function ToleranceSection({ job, drawing }: { job: Job; drawing: Drawing }) {
  const stated = drawing.dimensions.filter(
    (dimension): dimension is Toleranced => dimension.tolerance !== null && dimension.contourId !== null,
  );
  if (stated.length === 0) return null;
  return (
    <Part title="Stated tolerances" aside={`${stated.length} of ${drawing.dimensions.length} dimensions`}>
      <ul className="plain-rows">
        {stated.map((dimension, i) => (
          <ToleranceRow key={i} dimension={dimension} present={job.sizeShifts[dimension.contourId] ?? 0} />
        ))}
      </ul>
    </Part>
  );
}

function ToleranceRow({ dimension, present }: { dimension: Toleranced; present: number }) {
  const app = useApp();
  const unit = useAppState((state) => state.unit);
  const { contourId, sizeShift, growth } = dimension;
  const isMet = Math.abs(sizeShift - present) < tenNanometres;
  return (
    <li
      className="plain-row"
      onPointerEnter={() => hoverTarget(app, { kind: 'contour', id: contourId })}
      onPointerLeave={() => hoverTarget(app, null)}
    >
      <span>{tolerancedSize(dimension, unit)}</span>
      {growth === 0 ? (
        <span className="panel-note">not changed by a size shift</span>
      ) : isMet ? (
        <span className="panel-note">{contourId} is made to its middle</span>
      ) : (
        <button
          type="button"
          className="button button-small"
          onClick={() => editJob(app, setSizeShift, { contourId, sizeShift })}
        >
          {sizeShift === 0
            ? `${contourId} as drawn`
            : `Shift ${contourId} by ${formatLength(sizeShift, unit)} per side`}
        </button>
      )}
    </li>
  );
}

/** Below what any control shows. */
const tenNanometres = 0.00001;

const signs = { length: '', diameter: '⌀', radius: 'R' } as const;

/** "⌀6.5 +0.1 −0.02 mm" */
function tolerancedSize(
  { kind, nominal, tolerance: { plus, minus } }: Toleranced,
  unit: DisplayUnit,
): string {
  const signed = (mm: number) =>
    `${mm > 0 ? '+' : mm < 0 ? '−' : ''}${formatLengthNumber(Math.abs(mm), unit)}`;
  const deviations =
    plus === -minus ? `±${formatLengthNumber(plus, unit)}` : `${signed(plus)} ${signed(minus)}`;
  return `${signs[kind]}${formatLengthNumber(nominal, unit)} ${deviations} ${unit === 'inch' ? 'in' : 'mm'}`;
}
