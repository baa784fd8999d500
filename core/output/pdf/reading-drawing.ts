import type { Box, Point } from '../../geometry/contour';
import { boxAround } from '../../geometry/contour-measures';
import type { PinnedReading } from '../../inspection-settings';
import type { Plan } from '../../plan';
import { colours, memberStroke } from './member-drawing';
import { writeText } from './paper';
import { onPaper, setStroke, strokeRegion, type PaperView } from './paper-view';

/** The members with every reading in them, under its number in the table. */
export function readingDrawing(view: PaperView, { pairs }: Plan, readings: readonly PinnedReading[]): void {
  for (const { die, punch } of pairs) {
    for (const { role, asCut } of [die, punch]) strokeRegion(view, asCut, memberStroke(role, 0.15));
  }
  const { doc } = view.paper;
  setStroke(view.paper, { colour: colours.ink, width: 0.25 });
  readings.forEach((reading, k) => {
    const points = linePoints(reading).map((point) => onPaper(view, point));
    points.forEach((at, i) => {
      const from = points[i - 1];
      if (from) doc.line(from.x, from.y, at.x, at.y);
      doc.circle(at.x, at.y, 0.5);
    });
    const middle = points[reading.kind === 'angle' ? 1 : points.length - 1];
    if (middle) writeText(view.paper, String(k + 1), middle.x + 1, middle.y - 1, { size: 8, bold: true });
  });
}

/** What the drawing of readings has to show, mm. */
export const readingsBox = ({ drawing }: Plan, readings: readonly PinnedReading[]): Box =>
  readings
    .flatMap(linePoints)
    .map(({ x, y }): Box => ({ minX: x, minY: y, maxX: x, maxY: y }))
    .reduce(boxAround, drawing.box);

/** The points that a reading's line runs through; an angle's along both legs. */
function linePoints(reading: PinnedReading): readonly Point[] {
  switch (reading.kind) {
    case 'distance':
    case 'gap':
      return [reading.from, reading.to];
    case 'radius':
      return [reading.centre, reading.at];
    case 'angle':
      return [reading.first, reading.at, reading.second];
  }
}
