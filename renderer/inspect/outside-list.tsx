import { bandNames } from '../../core/inspect/band';
import type { ClearanceMap } from '../../core/inspect/clearance-map';
import type { ClearancePlace } from '../../core/inspect/clearance-place';
import { outsidePlaces } from '../../core/inspect/outside-places';
import { formatLength } from '../../core/units';
import { setInspect } from '../state/set-inspect';
import { useApp, useAppState } from '../state/use-app';

export interface OutsideListProps {
  readonly map: ClearanceMap;
  readonly onShow: (place: ClearancePlace) => void;
}

/** Every place outside the tolerance, worst first; pointing at one marks it along the punch, choosing it shows it. */
export function OutsideList({ map, onShow }: OutsideListProps) {
  const app = useApp();
  const unit = useAppState((state) => state.unit);
  const held = useAppState((state) => state.inspect.heldStation);
  const places = outsidePlaces(map);
  if (places.length === 0) return <p className="panel-note">None: the clearance is even within it.</p>;
  const mark = (station: number | null) => setInspect(app, { pointedStation: station });
  return (
    <ol className="inspect-list">
      {places.slice(0, mostListed).map(({ band, worst, length, from }) => (
        <li key={`${from}/${length}`}>
          <button
            type="button"
            className="link place-link"
            aria-current={held === worst.station}
            onPointerEnter={() => mark(worst.station)}
            onPointerLeave={() => mark(null)}
            onFocus={() => mark(worst.station)}
            onBlur={() => mark(null)}
            onClick={() => onShow(worst)}
          >
            <span className={`band band-${band}`} aria-hidden="true" />
            <span className="place-value">{formatLength(worst.clearance, unit)}</span>
            <span className="panel-note">
              {bandNames[band]}, {formatLength(length, unit)} long
            </span>
          </button>
        </li>
      ))}
      {places.length > mostListed && (
        <li className="panel-note">{places.length - mostListed} more are less far out.</li>
      )}
    </ol>
  );
}

const mostListed = 100;
