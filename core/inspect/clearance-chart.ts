import type { Region } from '../geometry/contour';
import { num, tableOfRegion } from '../geometry/segment-table';
import type { ClearanceMap } from './clearance-map';
import { clearancePlace } from './clearance-place';

/** A point of the chart: length along the punch and clearance there, mm. */
export interface ChartPoint {
  readonly station: number;
  readonly clearance: number;
}

/**
 * Clearance along the punch as a line of points, loop after loop: both ends of every piece, and points between them where
 * the clearance is not a straight line over the length.
 */
export function clearanceChart(map: ClearanceMap, punch: Region): readonly (readonly ChartPoint[])[] {
  const table = tableOfRegion(punch);
  const loops: ChartPoint[][] = [];
  for (const piece of map.pieces) {
    if (piece.from === 0 && map.loops.includes(piece.station)) loops.push([]);
    const line = loops.at(-1);
    const isStraight = num(table.radius, piece.segment) === 0 && piece.site.kind === 'line';
    const isLevel = Math.abs(piece.atTo - piece.atFrom) < map.tolerance / 100;
    const steps = isStraight || isLevel ? 1 : curvedSteps;
    for (let k = 0; k <= steps; k++) {
      const { station, clearance } = clearancePlace(
        table,
        piece,
        piece.from + ((piece.to - piece.from) * k) / steps,
      );
      line?.push({ station, clearance });
    }
  }
  return loops;
}

const curvedSteps = 12;
