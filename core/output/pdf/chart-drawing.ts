import type { ChartPoint } from '../../inspect/clearance-chart';
import type { ClearanceMap } from '../../inspect/clearance-map';
import { formatLengthNumber, type DisplayUnit } from '../../units';
import { colours } from './member-drawing';
import { writeText, type Area, type Paper } from './paper';
import { setStroke } from './paper-view';

/** Clearance along the punch: the line, the wanted clearance and the limits of the tolerance, with their numbers. */
export function chartDrawing(
  paper: Paper,
  whole: Area,
  map: ClearanceMap,
  chart: readonly (readonly ChartPoint[])[],
  unit: DisplayUnit,
): void {
  const { doc } = paper;
  const area: Area = {
    left: whole.left + 16,
    right: whole.right - 2,
    top: whole.top + 2,
    bottom: whole.bottom - 6,
  };
  const low = Math.min(0, map.least.clearance);
  const high = Math.max(map.greatest.clearance, map.wanted + map.tolerance) * 1.08;
  const atX = (station: number) => area.left + ((area.right - area.left) * station) / map.perimeter;
  const atY = (clearance: number) =>
    area.bottom - ((area.bottom - area.top) * (clearance - low)) / (high - low);
  setStroke(paper, { colour: '#808080', width: 0.15 });
  doc.rect(area.left, area.top, area.right - area.left, area.bottom - area.top);
  const levels: readonly (readonly [number, readonly number[]])[] = [
    [map.wanted, []],
    [0, []],
    [map.wanted + map.tolerance, [1.5, 1]],
    [map.wanted - map.tolerance, [1.5, 1]],
    [map.least.clearance, [0.3, 0.8]],
  ];
  const written: number[] = [];
  for (const [level, dash] of levels) {
    if (level < low || level > high) continue;
    setStroke(paper, { colour: level === 0 ? colours.ink : colours.within, width: 0.2, dash });
    doc.line(area.left, atY(level), area.right, atY(level));
    // Numbers that would run into each other are left out, the more important ones come first.
    if (written.some((y) => Math.abs(y - atY(level)) < numberHeight)) continue;
    written.push(atY(level));
    writeText(paper, formatLengthNumber(level, unit), area.left - 1, atY(level) + 0.9, {
      size: 6,
      align: 'right',
    });
  }
  for (const start of map.loops.slice(1, -1)) {
    setStroke(paper, { colour: '#808080', width: 0.15, dash: [0.6, 0.6] });
    doc.line(atX(start), area.top, atX(start), area.bottom);
  }
  setStroke(paper, { colour: colours.punch, width: 0.3 });
  for (const line of chart) {
    line.forEach(({ station, clearance }, k) => {
      if (k === 0) doc.moveTo(atX(station), atY(clearance));
      else doc.lineTo(atX(station), atY(clearance));
    });
    doc.stroke();
  }
  writeText(paper, '0', area.left, whole.bottom - 2.6, { size: 6 });
  writeText(paper, formatLengthNumber(map.perimeter, unit), area.right, whole.bottom - 2.6, {
    size: 6,
    align: 'right',
  });
  writeText(
    paper,
    `length along the punch, ${unit}; clearance upwards, ${unit}`,
    (area.left + area.right) / 2,
    whole.bottom - 2.6,
    { size: 6.5, align: 'center' },
  );
}

/** mm on paper. */
const numberHeight = 2.2;
