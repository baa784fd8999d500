import { Pin, Trash2 } from 'lucide-react';
import { ToggleGroup } from 'radix-ui';
import { useState } from 'react';
import { valueOfReading, type Reading } from '../../core/inspect/reading';
import { degrees, formatLength, type DisplayUnit } from '../../core/units';
import { CoordinateInput } from '../controls/coordinate-input';
import { Part } from '../drawing/part';
import { jobOf } from '../state/app-state';
import { setInspection } from '../state/edits/set-inspection';
import { editJob } from '../state/job-edit';
import { pickPoint } from '../state/pick-point';
import { setInspect } from '../state/set-inspect';
import { snapAt } from '../state/snap-at';
import { useApp, useAppState } from '../state/use-app';

const tools: readonly { readonly kind: Reading['kind']; readonly name: string; readonly how: string }[] = [
  { kind: 'distance', name: 'Distance', how: 'Pick two points.' },
  { kind: 'angle', name: 'Angle', how: 'Pick the corner, then a point on each side.' },
  { kind: 'radius', name: 'Radius', how: 'Pick a place on an arc.' },
  {
    kind: 'gap',
    name: 'Gap',
    how: 'Pick a place on the punch or the die: the gap to the other is read square to it.',
  },
];

/** Distances, angles, radii and gaps picked on the picture; what is pinned goes onto the inspection report. */
export function MeasuringSection() {
  const app = useApp();
  const unit = useAppState((state) => state.unit);
  const { tool, reading, picks } = useAppState((state) => state.inspect);
  const job = useAppState(jobOf);
  const how = tools.find(({ kind }) => kind === tool)?.how;
  const readings = job?.inspection.readings ?? [];
  const change = (next: readonly Reading[], say: string) =>
    editJob(app, setInspection, { change: { readings: [...next] }, say });
  return (
    <>
      <Part title="Measure">
        <ToggleGroup.Root
          className="switch"
          type="single"
          aria-label="What is measured"
          value={tool ?? ''}
          onValueChange={(chosen) =>
            setInspect(app, {
              tool: chosen === '' ? null : (chosen as Reading['kind']),
              picks: [],
              reading: null,
              snap: null,
            })
          }
        >
          {tools.map(({ kind, name }) => (
            <ToggleGroup.Item key={kind} className="switch-item" value={kind}>
              {name}
            </ToggleGroup.Item>
          ))}
        </ToggleGroup.Root>
        <p className="panel-note part-line">
          {how ?? 'Choose what to measure. Points hold on to ends, middles, centres, tangents and edges.'}
          {picks.length > 0 && ` ${picks.length} picked.`}
        </p>
        {tool && <TypedPoint />}
        {reading && (
          <div className="plain-row" role="status">
            <span className="place-value">{sayReading(reading, unit)}</span>
            <span className="panel-note">{reading.kind}</span>
            <button
              type="button"
              className="button button-small"
              onClick={() => {
                change([...readings, reading], `Pinned ${reading.kind} ${sayReading(reading, unit)}`);
                setInspect(app, { reading: null });
              }}
            >
              <Pin aria-hidden="true" />
              Pin
            </button>
          </div>
        )}
      </Part>
      <Part title="Pinned" aside={`${readings.length} on the report`}>
        {readings.length === 0 ? (
          <p className="panel-note">Nothing is pinned.</p>
        ) : (
          <ol className="inspect-list">
            {readings.map((one, k) => (
              <li key={k} className="plain-row">
                <span className="place-value">{sayReading(one, unit)}</span>
                <span className="panel-note">{one.kind}</span>
                <button
                  type="button"
                  className="icon-button"
                  aria-label={`Take out the ${one.kind} ${sayReading(one, unit)}`}
                  onClick={() =>
                    change(
                      readings.filter((_, i) => i !== k),
                      `Took out the ${one.kind}`,
                    )
                  }
                >
                  <Trash2 aria-hidden="true" />
                </button>
              </li>
            ))}
          </ol>
        )}
      </Part>
    </>
  );
}

/** A point by its coordinates, for whoever has no pointer or knows the place; it holds on to what is there. */
function TypedPoint() {
  const app = useApp();
  const [at, setAt] = useState({ x: 0, y: 0 });
  return (
    <p className="part-line">
      Point at x <CoordinateInput label="x of the point" value={at.x} onCommit={(x) => setAt({ ...at, x })} />
      , y <CoordinateInput label="y of the point" value={at.y} onCommit={(y) => setAt({ ...at, y })} />{' '}
      <button
        type="button"
        className="button button-small"
        onClick={() => pickPoint(app, snapAt(app, at), at)}
      >
        Take it
      </button>
    </p>
  );
}

function sayReading(reading: Reading, unit: DisplayUnit): string {
  const { value, kind } = valueOfReading(reading);
  return kind === 'angle' ? `${Number(degrees(value).toFixed(4))}°` : formatLength(value, unit);
}
