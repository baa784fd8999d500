import type { ComparedSet } from '../../core/inspect/compare-set';
import type { ProfileTolerance } from '../../core/inspect/profile-tolerance';
import { degrees, formatLength, formatLengthNumber } from '../../core/units';
import { Choice } from '../controls/choice';
import { Part } from '../drawing/part';
import { setInspect } from '../state/set-inspect';
import { showPlace } from '../state/show-place';
import { useApp, useAppState } from '../state/use-app';
import { whiskerTimes } from '../state/whisker-times';
import { DeviationChart } from './deviation-chart';

/** The verdict over one set of points, its numbers, their spread, and every point. */
export function PointsPart({ compared, zone }: { compared: ComparedSet; zone: ProfileTolerance }) {
  const app = useApp();
  const unit = useAppState((state) => state.unit);
  const times = useAppState(whiskerTimes);
  const chosen = useAppState((state) => state.inspect.whiskerTimes);
  const { comparison } = compared;
  const { passes, profile, found, points, worst } = comparison;
  const length = (mm: number) => formatLength(mm, unit);
  const outliers = points.filter(({ isOutlier }) => isOutlier);
  const show = (index: number) => {
    const point = points[index];
    if (!point) return;
    setInspect(app, { pointedRow: index });
    showPlace(app, point.foot, 1);
  };
  return (
    <>
      <Part title="Verdict" aside={`${comparison.counted} of ${points.length} points count`}>
        <p className="verdict" data-passes={passes}>
          {passes ? 'Passes' : 'Fails'}: profile {length(profile)} of {length(zone.width)} allowed
        </p>
        <dl className="facts inspect-facts">
          <dt>Deviations</dt>
          <dd>
            {length(comparison.least)} to {length(comparison.greatest)}
          </dd>
          <dt>Mean, rms</dt>
          <dd>
            {length(comparison.mean)}, {length(comparison.rms)}
          </dd>
          <dt>The part lay</dt>
          <dd>
            x {length(found.dx)}, y {length(found.dy)}, turned {Number(degrees(found.turn).toFixed(4))}°
          </dd>
          <dt>Outliers</dt>
          <dd>{outliers.length === 0 ? 'none' : outliers.map(({ id }) => id).join(', ')}</dd>
        </dl>
        <p className="panel-note">Positive: more material than the profile has.</p>
        <div className="inspect-buttons">
          <button
            type="button"
            className="button button-small"
            disabled={worst < 0}
            onClick={() => show(worst)}
          >
            Show the worst place
          </button>
          <span>
            Whiskers{' '}
            <Choice
              label="Exaggeration of deviations"
              value={chosen === null ? 'fit' : String(chosen)}
              text={`${times} times`}
              options={[
                { value: 'fit', name: 'as fits' },
                ...[1, 10, 20, 50, 100, 200, 500, 1000].map((n) => ({
                  value: String(n),
                  name: `${n} times`,
                })),
              ]}
              onChoose={(value) => setInspect(app, { whiskerTimes: value === 'fit' ? null : Number(value) })}
            />
          </span>
        </div>
        <DeviationChart deviations={points.map(({ deviation }) => deviation)} zone={zone} />
      </Part>
      <Part title="Points" aside={unit}>
        <PointTable compared={compared} onShow={show} />
      </Part>
    </>
  );
}

function PointTable({ compared, onShow }: { compared: ComparedSet; onShow: (index: number) => void }) {
  const app = useApp();
  const unit = useAppState((state) => state.unit);
  const pointed = useAppState((state) => state.inspect.pointedRow);
  const { points } = compared.comparison;
  const number = (mm: number) => formatLengthNumber(mm, unit);
  return (
    <div className="panel-scroll">
      <table className="table rows" aria-label="Measured points">
        <thead>
          <tr>
            <th scope="col">Point</th>
            <th scope="col">x</th>
            <th scope="col">y</th>
            <th scope="col">Deviation</th>
            <th scope="col">Verdict</th>
          </tr>
        </thead>
        <tbody>
          {points.slice(0, mostRows).map(({ id, measured, deviation, passes, isOutlier }, k) => (
            <tr
              key={k}
              data-selected={k === pointed}
              onPointerEnter={() => setInspect(app, { pointedRow: k })}
              onPointerLeave={() => setInspect(app, { pointedRow: null })}
            >
              <th scope="row">
                <button type="button" className="link" onClick={() => onShow(k)}>
                  {id}
                </button>
              </th>
              <td>{number(measured.x)}</td>
              <td>{number(measured.y)}</td>
              <td>{number(deviation)}</td>
              <td>
                {passes ? 'passes' : 'fails'}
                {isOutlier && ', outlier'}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      {points.length > mostRows && (
        <p className="panel-note">
          The other {points.length - mostRows} points are in the report and its CSV.
        </p>
      )}
    </div>
  );
}

/** Rows that a list can be looked through. */
const mostRows = 500;
