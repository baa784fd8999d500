import { useMemo, useRef, type KeyboardEvent, type PointerEvent } from 'react';
import type { ChartPoint } from '../../core/inspect/clearance-chart';
import type { ClearanceMap } from '../../core/inspect/clearance-map';
import { clearanceAtStation } from '../../core/inspect/probe-clearance';
import type { ClearancePlace } from '../../core/inspect/clearance-place';
import { degrees, formatLength } from '../../core/units';
import { setInspect } from '../state/set-inspect';
import { showPlace } from '../state/show-place';
import { useApp, useAppState } from '../state/use-app';

/** The chart's own units: stretched to the strip's width, its lines are not; its height is in pixels. */
const width = 1000;
const height = 100;

/**
 * Clearance along the punch, under the picture. Pointing at it marks the place in the picture and the other way round;
 * a click holds the place and shows it; the arrow keys run along the punch.
 */
export function ClearanceStrip() {
  const app = useApp();
  const frame = useRef<HTMLDivElement>(null);
  const unit = useAppState((state) => state.unit);
  const isShown = useAppState(({ pane, inspect }) => pane === 'inspect' && inspect.section === 'clearance');
  const { clearance, pointedStation, heldStation } = useAppState((state) => state.inspect);
  const picture = useMemo(() => clearance && chartOf(clearance.map, clearance.chart), [clearance]);
  if (!isShown || !clearance || !picture) return null;
  const { map, punch } = clearance;
  const stationOf = (event: PointerEvent): number => {
    const box = frame.current?.getBoundingClientRect();
    return box ? map.perimeter * Math.min(1, Math.max(0, event.clientX - box.left) / box.width) : 0;
  };
  const hold = (station: number) => {
    setInspect(app, { heldStation: station });
    showPlace(app, clearanceAtStation(map, punch, station).at);
  };
  const onKeyDown = (event: KeyboardEvent) => {
    const step = { ArrowRight: 1, ArrowLeft: -1, PageUp: 20, PageDown: -20 }[event.key];
    if (step === undefined) return;
    event.preventDefault();
    const from = heldStation ?? 0;
    const next = from + (step * map.perimeter) / 400;
    setInspect(app, { heldStation: ((next % map.perimeter) + map.perimeter) % map.perimeter });
  };
  const shown = pointedStation ?? heldStation;
  const place = shown === null ? null : clearanceAtStation(map, punch, shown);
  const words = place ? formatLength(place.clearance, unit) : '';
  return (
    <div className="strip" role="group" aria-label="Clearance along the punch">
      <svg className="strip-levels" width={76} height={height} aria-hidden="true">
        {picture.levels.map(({ value, y, kind, isNamed }) =>
          isNamed ? (
            <text key={kind} x={72} y={y + 4}>
              {formatLength(value, unit)}
            </text>
          ) : null,
        )}
      </svg>
      <div
        ref={frame}
        className="strip-chart"
        role="slider"
        tabIndex={0}
        aria-label="Place along the punch"
        aria-valuemin={0}
        aria-valuemax={map.perimeter}
        aria-valuenow={shown ?? 0}
        aria-valuetext={shown === null ? 'none' : `${formatLength(shown, unit)} along: ${words}`}
        onPointerMove={(event) => setInspect(app, { pointedStation: stationOf(event) })}
        onPointerLeave={() => setInspect(app, { pointedStation: null })}
        onClick={(event) => hold(stationOf(event as unknown as PointerEvent))}
        onKeyDown={onKeyDown}
      >
        <svg viewBox={`0 0 ${width} ${height}`} preserveAspectRatio="none" aria-hidden="true">
          {picture.levels.map(({ y, kind }) => (
            <path key={kind} className={`line-${kind}`} d={`M0 ${y}H${width}`} />
          ))}
          {map.loops.slice(1, -1).map((start) => (
            <path key={start} className="line-loop" d={`M${(width * start) / map.perimeter} 0V${height}`} />
          ))}
          <path className="line-clearance" d={picture.path} />
          {[heldStation, pointedStation].map(
            (station, k) =>
              station !== null && (
                <path
                  key={k}
                  className={k === 0 ? 'line-held' : 'line-pointed'}
                  d={`M${(width * station) / map.perimeter} 0V${height}`}
                />
              ),
          )}
        </svg>
      </div>
      <output className="strip-words">
        {shown === null
          ? `${formatLength(map.perimeter, unit)} round the punch`
          : `${words} at ${formatLength(shown, unit)} along the punch${place ? normalWords(place) : ''}`}
      </output>
    </div>
  );
}

/** The way from the punch to the die, counter-clockwise from the drawing's x; nothing where they touch. */
function normalWords({ at, foot, clearance }: ClearancePlace): string {
  // Where they overlap the nearest point of the die lies behind.
  const way = clearance < 0 ? -1 : 1;
  const [x, y] = [way * (foot.x - at.x), way * (foot.y - at.y)];
  if (x === 0 && y === 0) return '';
  return `, normal ${Number(degrees(Math.atan2(y, x)).toFixed(2))}°`;
}

interface Level {
  readonly kind: 'high' | 'wanted' | 'low' | 'zero';
  readonly value: number;
  readonly y: number;
  /** Whether there is room for its number. */
  readonly isNamed: boolean;
}

function chartOf(map: ClearanceMap, chart: readonly (readonly ChartPoint[])[]) {
  const low = Math.min(0, map.least.clearance);
  const high = Math.max(map.greatest.clearance, map.wanted + map.tolerance);
  const room = (high - low) * 0.06;
  const atY = (clearance: number) => height - (height * (clearance - low + room)) / (high - low + 2 * room);
  const path = chart
    .map((line) =>
      line
        .map(({ station, clearance }, k) => {
          const x = ((width * station) / map.perimeter).toFixed(2);
          return `${k === 0 ? 'M' : 'L'}${x} ${atY(clearance).toFixed(2)}`;
        })
        .join(''),
    )
    .join('');
  const named: number[] = [];
  // The more important first: numbers that would run into each other are left out.
  const levels = (
    [
      ['wanted', map.wanted],
      ['zero', 0],
      ['high', map.wanted + map.tolerance],
      ['low', map.wanted - map.tolerance],
    ] as const
  ).map(([kind, value]): Level => {
    const y = atY(value);
    const isNamed = named.every((other) => Math.abs(other - y) >= lineHeight);
    if (isNamed) named.push(y);
    return { kind, value, y, isNamed };
  });
  return { path, levels };
}

const lineHeight = 12;
