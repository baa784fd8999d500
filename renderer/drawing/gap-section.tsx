import type { GapHistogram } from '../../core/drawing/gap-histogram';
import type { Job } from '../../core/job';
import { formatLength } from '../../core/units';
import { LengthInput } from '../controls/length-input';
import { setDrawing } from '../state/edits/set-drawing';
import { editJob } from '../state/job-edit';
import { useApp, useAppState } from '../state/use-app';
import { GapChart } from './gap-chart';
import { Part } from './part';

/** How far open ends are from each other, and up to where they are joined. */
export function GapSection({ job, gaps }: { job: Job; gaps: GapHistogram }) {
  const app = useApp();
  const unit = useAppState((state) => state.unit);
  const { gapTolerance } = job.drawing;
  const choose = (mm: number) => editJob(app, setDrawing, { gapTolerance: mm });
  const { exact, bins, beyond, suggested } = gaps;
  const apart = bins.reduce((sum, { count }) => sum + count, 0);
  return (
    <Part title="Gaps between ends" aside={`${exact} ends meet exactly`}>
      {apart === 0 ? (
        <p className="panel-note">
          {exact + beyond === 0
            ? 'Nothing is drawn in single pieces.'
            : 'No end lies near another without meeting it.'}
        </p>
      ) : (
        <GapChart bins={bins} gapTolerance={gapTolerance} onChoose={choose} />
      )}
      <p className="part-line">
        Ends up to <LengthInput label="Gap tolerance" value={gapTolerance} onCommit={(mm) => choose(mm)} />{' '}
        apart are joined.
      </p>
      {suggested !== null && !isBetweenTheSame(gaps, suggested, gapTolerance) && (
        <p className="part-line">
          <button type="button" className="button button-small" onClick={() => choose(rounded(suggested))}>
            Join up to {formatLength(rounded(suggested), unit)}
          </button>{' '}
          <span className="panel-note">parts the small gaps from the large ones</span>
        </p>
      )}
      {beyond > 0 && <p className="panel-note">{beyond} ends have no other end within 5 mm.</p>}
    </Part>
  );
}

/** Two digits: what a person would type. */
const rounded = (mm: number): number => Number(mm.toPrecision(2));

/** Whether two tolerances close the same gaps, as far as the bars tell. */
const isBetweenTheSame = ({ bins }: GapHistogram, a: number, b: number): boolean =>
  bins.every(({ from, to, count }) => count === 0 || a >= to === b >= to || a >= from === b >= from);
