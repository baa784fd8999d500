import type { Box, Point, Region } from '../../geometry/contour';
import { boxAround, contourBox, eachSegment } from '../../geometry/contour-measures';
import { pointAlong } from '../../geometry/along-segment';
import { addSegment, emptyTable, num } from '../../geometry/segment-table';
import * as portable from '../../geometry/portable-math';

/** A page's share of a chart. */
export interface Tile {
  /** Column letter and row number, "B3": A1 is the upper left one. */
  readonly name: string;
  /** The point of the part in the middle of the page, mm. */
  readonly middle: Point;
  /** What of the part the page may show, mm. */
  readonly box: Box;
}

export interface Tiling {
  readonly columns: number;
  readonly rows: number;
  readonly tiles: readonly Tile[];
}

/**
 * The pages that a chart takes: one where the part fits, else a grid whose pages overlap by twice `overlap`, so that
 * the marks at their corners are the same places of the part on neighbouring pages. Pages without a line are left out.
 * Page size and overlap in mm on paper.
 */
export function overlayTiles(
  lines: Region,
  magnification: number,
  page: { readonly width: number; readonly height: number },
  overlap: number,
): Tiling {
  const box = lines.map(contourBox).reduce(boxAround, contourBox([]));
  const width = box.maxX - box.minX;
  const height = box.maxY - box.minY;
  const middle = { x: (box.minX + box.maxX) / 2, y: (box.minY + box.maxY) / 2 };
  const isAlone =
    width * magnification + 2 * overlap <= page.width && height * magnification + 2 * overlap <= page.height;
  const pitch = {
    x: (page.width - 2 * overlap) / magnification,
    y: (page.height - 2 * overlap) / magnification,
  };
  const columns = isAlone ? 1 : Math.max(1, Math.ceil(width / pitch.x));
  const rows = isAlone ? 1 : Math.max(1, Math.ceil(height / pitch.y));
  const half = { x: page.width / 2 / magnification, y: page.height / 2 / magnification };
  const tileAt = (column: number, row: number): Tile => {
    const x = middle.x + (column - (columns - 1) / 2) * pitch.x;
    const y = middle.y - (row - (rows - 1) / 2) * pitch.y;
    const shown = { minX: x - half.x, minY: y - half.y, maxX: x + half.x, maxY: y + half.y };
    return { name: `${columnName(column)}${row + 1}`, middle: { x, y }, box: shown };
  };
  if (isAlone) return { columns, rows, tiles: [tileAt(0, 0)] };
  // What lies in the overlap only is on the neighbour's page too, and needs none of its own.
  const cellOf = ({ middle: { x, y } }: Tile): Box => ({
    minX: x - pitch.x / 2,
    minY: y - pitch.y / 2,
    maxX: x + pitch.x / 2,
    maxY: y + pitch.y / 2,
  });
  const first = cellOf(tileAt(0, 0));
  const found = new Map<number, Tile>();
  // Each chord looks at the few pages that its box may meet: a large part has thousands of pages, most of them empty.
  eachChord(lines, (x0, y0, x1, y1) => {
    const from = Math.max(0, Math.floor((Math.min(x0, x1) - first.maxX) / pitch.x));
    const to = Math.min(columns - 1, Math.ceil((Math.max(x0, x1) - first.minX) / pitch.x));
    const top = Math.max(0, Math.floor((first.minY - Math.max(y0, y1)) / pitch.y));
    const bottom = Math.min(rows - 1, Math.ceil((first.maxY - Math.min(y0, y1)) / pitch.y));
    for (let row = top; row <= bottom; row++) {
      for (let column = from; column <= to; column++) {
        const key = row * columns + column;
        if (found.has(key)) continue;
        const tile = tileAt(column, row);
        if (crosses(x0, y0, x1, y1, cellOf(tile))) found.set(key, tile);
      }
    }
  });
  const tiles = [...found].sort(([a], [b]) => a - b).map(([, tile]) => tile);
  return { columns, rows, tiles };
}

/** A, B, …, Z, AA, AB, … */
function columnName(column: number): string {
  const last = String.fromCharCode(65 + (column % 26));
  return column < 26 ? last : `${columnName(Math.floor(column / 26) - 1)}${last}`;
}

/** Lines as they are, arcs by chords of a few degrees. */
function eachChord(lines: Region, look: (x0: number, y0: number, x1: number, y1: number) => void): void {
  const at = new Float64Array(2);
  for (const contour of lines) {
    eachSegment(contour, (from, to) => {
      const parts = Math.max(1, Math.ceil(Math.abs(4 * portable.atan(from.bulge)) / lookedChord));
      const table = emptyTable(1);
      addSegment(table, from.x, from.y, to.x, to.y, from.bulge);
      let [x, y] = [from.x, from.y];
      for (let k = 1; k <= parts; k++) {
        pointAlong(table, 0, k / parts, at);
        look(x, y, num(at, 0), num(at, 1));
        [x, y] = [num(at, 0), num(at, 1)];
      }
    });
  }
}

/** Its sagitta is far less than the overlap, whose lines the neighbour shows. */
const lookedChord = Math.PI / 60;

/** Whether a line has a point in a box (Liang and Barsky's clipping, 1984). */
function crosses(x0: number, y0: number, x1: number, y1: number, box: Box): boolean {
  let [from, to] = [0, 1];
  const edges = [
    [x0 - x1, x0 - box.minX],
    [x1 - x0, box.maxX - x0],
    [y0 - y1, y0 - box.minY],
    [y1 - y0, box.maxY - y0],
  ] as const;
  for (const [step, room] of edges) {
    if (step === 0 && room < 0) return false;
    if (step < 0) from = Math.max(from, room / step);
    if (step > 0) to = Math.min(to, room / step);
  }
  return from <= to;
}
