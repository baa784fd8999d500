import type { Drawing } from '../../core/drawing/drawing';
import { formatLength } from '../../core/units';
import { useAppState } from '../state/use-app';
import { Part } from './part';

/** What of the drawing is no edge of the part, and why; and how well curves were met. */
export function RestSection({ drawing }: { drawing: Drawing }) {
  const unit = useAppState((state) => state.unit);
  const total = drawing.unused.reduce((sum, { count }) => sum + count, 0);
  return (
    <Part title="Not used" aside={`${total} ${total === 1 ? 'entity' : 'entities'}`}>
      {drawing.largestFitError > 0 && (
        <p className="panel-note">
          Splines and ellipses became arcs no farther away than {formatLength(drawing.largestFitError, unit)}.
        </p>
      )}
      {drawing.unused.length === 0 ? (
        <p className="panel-note">Everything in the drawing is part of a contour.</p>
      ) : (
        <table className="table rows" aria-label="Entities that are not used">
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
                <td className="cut-short" title={layer}>
                  {layer}
                </td>
                <td>{kind}</td>
                <td className="wraps">{reason}</td>
                <td className="count">{count}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
    </Part>
  );
}
