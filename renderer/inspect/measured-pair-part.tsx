import { bandNames } from '../../core/inspect/band';
import type { MeasuredPairOf } from '../../core/inspect/inspection';
import { formatLength } from '../../core/units';
import { Part } from '../drawing/part';
import { setInspect } from '../state/set-inspect';
import { showPlace } from '../state/show-place';
import { useApp, useAppState } from '../state/use-app';

/** The real clearance of every pair of which both members were measured, with a verdict by place. */
export function MeasuredPairPart() {
  const pairs = useAppState((state) => state.inspect.measured?.measuredPairs) ?? [];
  return pairs.map((pair) => <OnePair key={pair.contourId} measured={pair} />);
}

function OnePair({ measured: { contourId, punchSet, dieSet, pair } }: { measured: MeasuredPairOf }) {
  const app = useApp();
  const unit = useAppState((state) => state.unit);
  const isShown = useAppState((state) => state.inspect.shownPairId === contourId);
  const { map, places, passes, widestGap } = pair;
  const length = (mm: number) => formatLength(mm, unit);
  const failing = places
    .filter(({ band }) => band !== 'within')
    .sort((a, b) => Math.abs(b.clearance - map.wanted) - Math.abs(a.clearance - map.wanted));
  return (
    <Part title={`Measured clearance of ${contourId}`}>
      <p className="panel-note">
        {punchSet} in {dieSet}
      </p>
      <p className="verdict" data-passes={passes}>
        {passes
          ? `Passes: all ${places.length} places are within the tolerance`
          : `Fails: ${failing.length} of ${places.length} places are outside the tolerance`}
      </p>
      <label className="tick part-line">
        <input
          type="checkbox"
          checked={isShown}
          onChange={({ target }) => setInspect(app, { shownPairId: target.checked ? contourId : null })}
        />
        Show the real clearance in the picture
      </label>
      <dl className="facts inspect-facts">
        <dt>Least</dt>
        <dd>{length(map.least.clearance)}</dd>
        <dt>Greatest</dt>
        <dd>{length(map.greatest.clearance)}</dd>
        <dt>Mean</dt>
        <dd>{length(map.mean)}</dd>
        <dt>Not measured</dt>
        <dd>
          up to {length(widestGap.punch)} along the punch, {length(widestGap.die)} along the die
        </dd>
      </dl>
      <ol className="inspect-list">
        {failing.slice(0, mostListed).map(({ member, id, at, clearance, band }) => (
          <li key={`${member}/${id}`}>
            <button type="button" className="link place-link" onClick={() => showPlace(app, at)}>
              <span className={`band band-${band}`} aria-hidden="true" />
              <span className="place-value">{length(clearance)}</span>
              <span className="panel-note">
                {bandNames[band]}, point {id} of the {member}
              </span>
            </button>
          </li>
        ))}
      </ol>
    </Part>
  );
}

const mostListed = 60;
