import Flatbush from 'flatbush';
import type { Box, Point } from '../geometry/contour';
import { indexOf } from '../geometry/segment-index';
import { tableOfRegion } from '../geometry/segment-table';
import { windingAt } from '../geometry/winding';
import type { NestedRing } from './nest-rings';
import type { Ring } from './ring';

/**
 * Closed contours that belong to the sheet and not to the part, each with its reason: what lies on a layer named for
 * construction or the sheet; cells of a title block (upright rectangles with words in them, side by side or in one
 * another), and the frame around a drawing that a cell leans on. Nothing where no other contour would be left: a plate
 * with words on it is a plate.
 */
export function sheetRings(
  nested: readonly NestedRing[],
  texts: readonly Point[],
): ReadonlyMap<Ring, string> {
  const found = new Map<Ring, string>();
  const layers = new Set(nested.map(({ ring }) => ring.layer));
  if (texts.length === 0 && ![...layers].some(isSheetLayer)) return found;
  const holdsOthers = new Set(
    nested.filter(({ ring }) => !isSheetLayer(ring.layer)).map(({ parent }) => parent),
  );
  for (const { ring } of nested) {
    if (isConstructionLayer(ring.layer)) found.set(ring, 'on a layer for construction');
    // An outline with holes on other layers is an outline, whatever its layer is called.
    const isOutline = holdsOthers.has(ring) && !isUprightRectangle(ring);
    if (frameLayer.test(ring.layer) && !isOutline) found.set(ring, 'on a layer for the sheet');
  }
  const cells = cellsOf(nested, texts);
  for (const { ring, parent } of nested) {
    if (!cells.has(ring)) continue;
    const isInPart = parent && !cells.has(parent) && !isFrameOf(parent, ring);
    if (isInPart) continue;
    if (!found.has(ring)) found.set(ring, 'cell of a title block');
    if (parent && !cells.has(parent)) found.set(parent, 'frame of the sheet');
  }
  // What is left must be a part of its own.
  return found.size < nested.length ? found : new Map();
}

const isFrameOf = (frame: Ring, cell: Ring): boolean =>
  isUprightRectangle(frame) && leansOn(cell.box, frame.box);

/** Layers that hold no edge of a part: open lines on them are not looked at. */
export const isSheetLayer = (layer: string): boolean => isConstructionLayer(layer) || frameLayer.test(layer);

/** DEFPOINTS is never plotted; the other names are those that drawing offices use (common practice). */
const isConstructionLayer = (layer: string): boolean =>
  /^(defpoints|construction.*|constr|konstruktion|hilfslinien?|aux(iliary)?)$/i.test(layer);

const frameLayer =
  /^(title.*|.*title[ _-]?block.*|(sheet|drawing)?[ _-]?(border|frame)s?|sheet|schriftfeld.*|(zeichnungs)?rahmen)$/i;

function cellsOf(nested: readonly NestedRing[], texts: readonly Point[]): ReadonlySet<Ring> {
  const cells = new Set<Ring>();
  if (texts.length === 0) return cells;
  const worded = ringsWithWords(nested, texts);
  const children = new Map<Ring, Ring[]>();
  for (const { ring, parent } of nested)
    if (parent) children.set(parent, [...(children.get(parent) ?? []), ring]);
  // A lone rectangle with a word in it may be a part with its name on it: a title block has cells side by side.
  const leaves = nested
    .map(({ ring }) => ring)
    .filter((ring) => isUprightRectangle(ring) && !children.has(ring));
  const worthy = leaves.filter((ring) => worded.has(ring)).slice(0, mostCells);
  for (const ring of worthy)
    if (worthy.some((other) => other !== ring && isBeside(ring, other))) cells.add(ring);
  const first = [...cells];
  for (const ring of leaves) if (first.some((cell) => isBeside(ring, cell))) cells.add(ring);
  // From the inside out: parents stand before what lies in them.
  for (let i = nested.length - 1; i >= 0; i--) {
    const { ring } = nested[i] as NestedRing;
    const inside = children.get(ring);
    if (inside?.every((child) => cells.has(child)) && isUprightRectangle(ring)) cells.add(ring);
  }
  return cells;
}

/** No title block has more; beyond these it is a table. */
const mostCells = 300;

/** They touch, or are no farther apart than a line is wide on paper. */
function isBeside(a: Ring, b: Ring): boolean {
  const [p, q] = [a.box, b.box];
  const near = Math.max(p.maxX - p.minX, p.maxY - p.minY) / 1000;
  return p.minX - near < q.maxX && q.minX - near < p.maxX && p.minY - near < q.maxY && q.minY - near < p.maxY;
}

/** The innermost ring around each text. */
function ringsWithWords(nested: readonly NestedRing[], texts: readonly Point[]): ReadonlySet<Ring> {
  const index = new Flatbush(nested.length);
  for (const { ring } of nested) {
    const { minX, minY, maxX, maxY } = ring.box;
    index.add(minX, minY, maxX, maxY);
  }
  index.finish();
  const segments = new Map<number, ReturnType<typeof indexOf>>();
  const worded = new Set<Ring>();
  for (const { x, y } of texts.slice(0, mostTexts)) {
    const around = index.search(x, y, x, y);
    around.sort((a, b) => (nested[a] as NestedRing).ring.area - (nested[b] as NestedRing).ring.area);
    const inner = around.find((i) => {
      const known = segments.get(i) ?? indexOf(tableOfRegion([(nested[i] as NestedRing).ring.contour]));
      segments.set(i, known);
      return windingAt(known, x, y) !== 0;
    });
    if (inner !== undefined) worded.add((nested[inner] as NestedRing).ring);
  }
  return worded;
}

/** A title block has some dozen words; beyond these it is a page of text. */
const mostTexts = 5000;

/** Upright, of lines only, as large as its box to a millionth. */
function isUprightRectangle({ contour, box, area }: Ring): boolean {
  if (contour.some(({ bulge }) => bulge !== 0)) return false;
  const { minX, minY, maxX, maxY } = box;
  const whole = (maxX - minX) * (maxY - minY);
  return whole - area < whole * 2 ** -20;
}

/** Within a hundredth of its size from one of the sides of the frame. */
function leansOn(cell: Box, frame: Box): boolean {
  const near = Math.max(frame.maxX - frame.minX, frame.maxY - frame.minY) / 100;
  return (
    Math.abs(cell.minX - frame.minX) < near ||
    Math.abs(cell.maxX - frame.maxX) < near ||
    Math.abs(cell.minY - frame.minY) < near ||
    Math.abs(cell.maxY - frame.maxY) < near
  );
}
