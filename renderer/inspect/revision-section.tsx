import { GitCompare } from 'lucide-react';
import { formatLength, formatLengthNumber } from '../../core/units';
import { Part } from '../drawing/part';
import { chooseFile } from '../host/choose-file';
import { compareRevision, takeOver } from '../state/compare-revision';
import { jobOf } from '../state/app-state';
import type { App } from '../state/app-store';
import type { MadeRevision } from '../state/inspect-state';
import { setInspect } from '../state/set-inspect';
import { showPlace } from '../state/show-place';
import { useApp, useAppState } from '../state/use-app';

/** The job compared with an earlier one or with a new drawing. */
export function RevisionSection() {
  const app = useApp();
  const { revision, busy } = useAppState((state) => state.inspect);
  return (
    <>
      <Part title="Compare" {...(revision ? { aside: `with ${revision.fileName}` } : {})}>
        <p className="panel-note">
          With an earlier job, to see what has changed since; or with a new drawing, to see what it would
          change.
        </p>
        <div className="inspect-buttons">
          <button type="button" className="button" disabled={busy} onClick={() => void compare(app)}>
            <GitCompare aria-hidden="true" />
            {busy ? 'Comparing…' : 'Choose a job or drawing…'}
          </button>
          {revision && (
            <button
              type="button"
              className="button button-small"
              onClick={() => setInspect(app, { revision: null })}
            >
              Close
            </button>
          )}
        </div>
      </Part>
      {revision && <ChangesParts made={revision} />}
    </>
  );
}

async function compare(app: App): Promise<void> {
  const file = await chooseFile(window);
  if (file) await compareRevision(app, file);
}

function ChangesParts({ made }: { made: MadeRevision }) {
  const app = useApp();
  const unit = useAppState((state) => state.unit);
  const pointed = useAppState((state) => state.inspect.pointedRow);
  const isStale = useAppState((state) => jobOf(state) !== made.of);
  const { places, settings, dispositions, taken } = made.revision;
  const mark = (row: number | null) => setInspect(app, { pointedRow: row });
  const count = (fate: string) => dispositions.filter((one) => one.fate === fate).length;
  return (
    <>
      <Part title="Changed places" aside={`${places.length}; older dashed, newer solid`}>
        {places.length === 0 && <p className="panel-note">The outlines are the same.</p>}
        <ol className="inspect-list">
          {places.map(({ change, size, area, box }, k) => {
            const middle = { x: (box.minX + box.maxX) / 2, y: (box.minY + box.maxY) / 2 };
            const reach = Math.max(size, Math.hypot(box.maxX - box.minX, box.maxY - box.minY) / 2);
            return (
              <li key={k}>
                <button
                  type="button"
                  className="link place-link"
                  aria-current={k === pointed}
                  onPointerEnter={() => mark(k)}
                  onPointerLeave={() => mark(null)}
                  onFocus={() => mark(k)}
                  onBlur={() => mark(null)}
                  onClick={() => showPlace(app, middle, 1.5 * reach)}
                >
                  <span>{k + 1}</span>
                  <span className="place-value">{formatLength(size, unit)}</span>
                  <span className="panel-note">
                    {change}, {areaWords(area, unit)} at x {formatLength(middle.x, unit)}, y{' '}
                    {formatLength(middle.y, unit)}
                  </span>
                </button>
              </li>
            );
          })}
        </ol>
      </Part>
      <Part
        title="Dispositions"
        aside={`${count('carried over')} stay, ${count('reopened')} reopened, ${count('gone')} gone`}
      >
        {dispositions.length === 0 && <p className="panel-note">Nothing was accepted before.</p>}
        <ul className="inspect-list">
          {dispositions.map(({ before, fate, why, reason }) => (
            <li key={before.key} className="disposition" data-fate={fate}>
              <strong>{before.title}</strong>: {fate}, {why}. <span className="panel-note">{reason}</span>
            </li>
          ))}
        </ul>
      </Part>
      {settings.length > 0 && (
        <Part title="Changed values" aside={`${settings.length}`}>
          <table className="table rows" aria-label="Changed values">
            <thead>
              <tr>
                <th scope="col">Value</th>
                <th scope="col">Before</th>
                <th scope="col">After</th>
              </tr>
            </thead>
            <tbody>
              {settings.slice(0, mostSettings).map(({ name, before, after }) => (
                <tr key={name}>
                  <th scope="row" className="wraps">
                    {name}
                  </th>
                  <td>{before}</td>
                  <td>{after}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </Part>
      )}
      <Part title="Take over">
        {taken.lost.length > 0 && (
          <p className="panel-note">
            Contour {taken.lost.join(', ')} is no longer there, and what was chosen for it goes.
          </p>
        )}
        {isStale && (
          <p className="panel-note">
            The job was edited since: choose the file again to compare it as it is now.
          </p>
        )}
        <button
          type="button"
          className="button button-strong"
          disabled={isStale}
          onClick={() => takeOver(app, made)}
        >
          {made.kind === 'new drawing'
            ? 'Take the new drawing, keep what stays accepted'
            : 'Accept here what stays accepted'}
        </button>
      </Part>
    </>
  );
}

const mostSettings = 80;

const areaWords = (mm2: number, unit: 'mm' | 'inch'): string =>
  unit === 'inch' ? `${formatLengthNumber(mm2 / 25.4, 'inch')} in²` : `${Number(mm2.toPrecision(4))} mm²`;
