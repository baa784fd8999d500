import type { Point } from '../../geometry/contour';
import { formatLengthNumber, type DisplayUnit } from '../../units';
import { colours } from './member-drawing';
import { writeText, type Area, type Paper } from './paper';
import { clipped, onPaper, setStroke, type PaperView } from './paper-view';

/** Lengths of the bars that a print is checked by, mm on paper. */
const barLengths = { across: 100, up: 50 } as const;

/** What is left of a page for the chart: below the head, above the bars. */
export const chartPageArea = ({ area }: Pick<Paper, 'area'>): Area => ({
  ...area,
  top: area.top + 1,
  bottom: area.bottom - 15,
});

/** A page of a chart: frame, marks at the corners, bars to check the print by, and the drawing in between. */
export function chartPage(
  view: PaperView,
  area: Area,
  overlap: number,
  tileName: string | null,
  unit: DisplayUnit,
  draw: () => void,
): void {
  const { paper } = view;
  clipped(paper, area, draw);
  setStroke(paper, { colour: colours.faint, width: 0.1 });
  paper.doc.rect(area.left, area.top, area.right - area.left, area.bottom - area.top);
  if (tileName !== null) {
    const [left, right] = [area.left + overlap, area.right - overlap];
    for (const y of [area.top + overlap, area.bottom - overlap]) {
      for (const x of [left, right]) registerMark(paper, { x, y });
    }
    writeText(paper, tileName, area.left + 2 * overlap, area.top + overlap, { size: 9, bold: true });
  }
  checkBars(paper, area, unit);
}

/** A cross in a ring: on the neighbouring page the same mark lies at the same place of the part. */
function registerMark({ doc }: Paper, { x, y }: Point): void {
  doc.setDrawColor(colours.ink);
  doc.setLineWidth(0.1);
  doc.setLineDashPattern([], 0);
  doc.circle(x, y, 1.5);
  doc.line(x - 3, y, x + 3, y);
  doc.line(x, y - 3, x, y + 3);
}

/** Centre lines through a point over the whole page, and through the drawing's zero where it is seen. */
export function crossHairs(view: PaperView, middle: Point, unit: DisplayUnit): void {
  const { paper, visible } = view;
  const { doc } = paper;
  for (const place of [middle, { x: 0, y: 0 }]) {
    const at = onPaper(view, place);
    setStroke(paper, { colour: colours.ink, width: 0.08, dash: [6, 1, 1, 1] });
    if (place.x > visible.minX && place.x < visible.maxX) {
      const [top, bottom] = [
        onPaper(view, { x: 0, y: visible.maxY }).y,
        onPaper(view, { x: 0, y: visible.minY }).y,
      ];
      doc.line(at.x, top, at.x, bottom);
      writeText(paper, `x ${formatLengthNumber(place.x, unit)}`, at.x + 0.6, bottom - 0.8, { size: 5.5 });
    }
    if (place.y > visible.minY && place.y < visible.maxY) {
      const [left, right] = [
        onPaper(view, { x: visible.minX, y: 0 }).x,
        onPaper(view, { x: visible.maxX, y: 0 }).x,
      ];
      setStroke(paper, { colour: colours.ink, width: 0.08, dash: [6, 1, 1, 1] });
      doc.line(left, at.y, right, at.y);
      writeText(paper, `y ${formatLengthNumber(place.y, unit)}`, left + 0.6, at.y - 0.6, { size: 5.5 });
    }
  }
}

/** Two bars, across and up: printers stretch the ways differently. */
function checkBars(paper: Paper, area: Area, unit: DisplayUnit): void {
  const { doc } = paper;
  const y = area.bottom + 8;
  const left = area.left;
  setStroke(paper, { colour: colours.ink, width: 0.15 });
  doc.line(left, y, left + barLengths.across, y);
  for (let mm = 0; mm <= barLengths.across; mm += 10) doc.line(left + mm, y - 1.5, left + mm, y);
  const right = area.right + 3;
  doc.line(right, area.top, right, area.top + barLengths.up);
  for (let mm = 0; mm <= barLengths.up; mm += 10) doc.line(right, area.top + mm, right + 1.5, area.top + mm);
  const inch = (mm: number) => (unit === 'inch' ? ` (${formatLengthNumber(mm, 'inch')} in)` : '');
  writeText(
    paper,
    `This bar is ${barLengths.across} mm${inch(barLengths.across)} long on paper, the one at the upper right ` +
      `${barLengths.up} mm${inch(barLengths.up)}. Print at 100 %, not fitted to the page, and measure both.`,
    left,
    y + 3.2,
    { size: 7 },
  );
}
