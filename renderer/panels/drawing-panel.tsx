import type { Drawing } from '../../core/drawing/drawing';
import { formatLength } from '../../core/units';
import { useAppState } from '../state/use-app';

/** The account of the drawing: what became contours, how well, and what was left out and why. */
export function DrawingPanel({ drawing }: { drawing: Drawing }) {
  const unit = useAppState((state) => state.unit);
  const largestGap = Math.max(0, ...drawing.contours.map((contour) => contour.largestGap));
  return (
    <>
      <dl className="facts">
        <dt>Closed contours</dt>
        <dd>{drawing.contours.length}</dd>
        <dt>Largest gap closed</dt>
        <dd>{formatLength(largestGap, unit)}</dd>
        <dt>Largest curve error</dt>
        <dd>{formatLength(drawing.largestFitError, unit)}</dd>
      </dl>
      {drawing.unused.length === 0 ? (
        <p className="panel-note">Everything in the drawing is part of a contour.</p>
      ) : (
        <div className="panel-scroll">
          <table className="table">
            <caption>Not used</caption>
            <thead>
              <tr>
                <th scope="col">Layer</th>
                <th scope="col">Entity</th>
                <th scope="col">Why</th>
                <th scope="col">Count</th>
              </tr>
            </thead>
            <tbody>
              {drawing.unused.map(({ layer, kind, reason, count }) => (
                <tr key={`${layer}/${kind}/${reason}`}>
                  <td>{layer}</td>
                  <td>{kind}</td>
                  <td>{reason}</td>
                  <td>{count}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </div>
      )}
    </>
  );
}
