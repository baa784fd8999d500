import type { Box, Chain, Contour, Point, Region, Vertex } from '../../geometry/contour';
import { arcOf, segmentBox } from '../../geometry/contour-measures';
import type { Area, Paper } from './paper';
import * as portable from '../../geometry/portable-math';

/** A window on the paper through which part of the drawing is seen at a scale. */
export interface PaperView {
  readonly paper: Paper;
  /** Where the drawing's zero lies on the paper, mm. */
  readonly zero: Point;
  /** mm on paper for each mm of the part. */
  readonly scale: number;
  /** What is seen of the drawing, mm. */
  readonly visible: Box;
}

export interface Stroke {
  readonly colour: string;
  /** mm on paper. */
  readonly width: number;
  /** mm on paper, empty or left out: solid. */
  readonly dash?: readonly number[];
}

/** The view that shows a box at a scale, its middle in the middle of an area of the paper. */
export function viewOf(paper: Paper, area: Area, middle: Point, scale: number): PaperView {
  const x = (area.left + area.right) / 2;
  const y = (area.top + area.bottom) / 2;
  const [halfWidth, halfHeight] = [
    (area.right - area.left) / 2 / scale,
    (area.bottom - area.top) / 2 / scale,
  ];
  return {
    paper,
    zero: { x: x - middle.x * scale, y: y + middle.y * scale },
    scale,
    visible: {
      minX: middle.x - halfWidth,
      minY: middle.y - halfHeight,
      maxX: middle.x + halfWidth,
      maxY: middle.y + halfHeight,
    },
  };
}

export const onPaper = ({ zero, scale }: PaperView, { x, y }: Point): Point => ({
  x: zero.x + x * scale,
  y: zero.y - y * scale,
});

/** Draws nothing outside an area while `draw` runs. */
export function clipped({ doc }: Paper, area: Area, draw: () => void): void {
  doc.saveGraphicsState();
  doc.rect(area.left, area.top, area.right - area.left, area.bottom - area.top, null);
  doc.clip();
  doc.discardPath();
  draw();
  doc.restoreGraphicsState();
}

export function strokeRegion(view: PaperView, region: Region, stroke: Stroke): void {
  for (const contour of region) strokeContour(view, contour, stroke);
}

/** A closed contour, arcs as curves within 0.0005 % of their radius; segments out of sight are left out. */
export function strokeContour(view: PaperView, contour: Contour, stroke: Stroke): void {
  const [first] = contour;
  if (first) strokeChain(view, [...contour, { ...first, bulge: 0 }], stroke);
}

/** The same for an open chain. */
export function strokeChain(view: PaperView, chain: Chain, stroke: Stroke): void {
  setStroke(view.paper, stroke);
  const { doc } = view.paper;
  let isDown = false;
  for (let k = 0; k + 1 < chain.length; k++) {
    const [from, to] = [chain[k] as Vertex, chain[k + 1] as Vertex];
    if (!meets(segmentBox(from, to), view.visible)) {
      isDown = false;
      continue;
    }
    if (!isDown) {
      const at = onPaper(view, from);
      doc.moveTo(at.x, at.y);
    }
    isDown = true;
    addSegment(view, from, to);
  }
  doc.stroke();
}

/** A filled area, outer loops and holes together. */
export function fillRegion(view: PaperView, region: Region, colour: string): void {
  const { doc } = view.paper;
  doc.setFillColor(colour);
  for (const contour of region) {
    contour.forEach((from, k) => {
      if (k === 0) {
        const at = onPaper(view, from);
        doc.moveTo(at.x, at.y);
      }
      addSegment(view, from, contour[(k + 1) % contour.length] as Vertex);
    });
    doc.close();
  }
  doc.fillEvenOdd();
}

export function setStroke({ doc }: Paper, { colour, width, dash = [] }: Stroke): void {
  doc.setDrawColor(colour);
  doc.setLineWidth(width);
  doc.setLineDashPattern([...dash], 0);
}

function addSegment(view: PaperView, from: Vertex, to: Vertex): void {
  const { doc } = view.paper;
  if (from.bulge === 0) {
    const at = onPaper(view, to);
    doc.lineTo(at.x, at.y);
    return;
  }
  const { cx, cy } = arcOf(from, to);
  const angle = 4 * portable.atan(from.bulge);
  const parts = Math.ceil(Math.abs(angle) / longestCurve);
  const step = angle / parts;
  // The cubic through both ends and the middle of an arc (error sin⁶(θ/4) · 4/27 of the radius at 45°: 0.0004 %).
  const handle = (4 / 3) * portable.tan(step / 4);
  let [rx, ry] = [from.x - cx, from.y - cy];
  for (let k = 1; k <= parts; k++) {
    const cos = portable.cos(k * step);
    const sin = portable.sin(k * step);
    const [sx, sy] = [from.x - cx, from.y - cy];
    const [ex, ey] = k === parts ? [to.x - cx, to.y - cy] : [sx * cos - sy * sin, sx * sin + sy * cos];
    const a = onPaper(view, { x: cx + rx - handle * ry, y: cy + ry + handle * rx });
    const b = onPaper(view, { x: cx + ex + handle * ey, y: cy + ey - handle * ex });
    const end = onPaper(view, { x: cx + ex, y: cy + ey });
    doc.curveTo(a.x, a.y, b.x, b.y, end.x, end.y);
    [rx, ry] = [ex, ey];
  }
}

const longestCurve = Math.PI / 4;

const meets = (a: Box, b: Box): boolean =>
  a.minX <= b.maxX && b.minX <= a.maxX && a.minY <= b.maxY && b.minY <= a.maxY;
