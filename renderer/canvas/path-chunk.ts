import { boxAround, segmentBox } from '../../core/geometry/contour-measures';
import type { Box, Chain, Contour, Point, Vertex } from '../../core/geometry/contour';
import { addContour, addSegment } from '../picture/contour-to-path';
import { toScreen } from '../state/viewport';
import { boxesMeet, type View } from './drawing-space';

/** A stretch of a contour as a ready path about its own origin: drawn when its box is on the canvas. */
export interface PathChunk {
  readonly box: Box;
  readonly origin: Point;
  readonly path: Path2D;
}

/** Segments of one chunk: few enough to cull well, many enough to keep the calls few (measured at 50,000 segments). */
const chunkLength = 256;

export const contourChunks = (contours: readonly Contour[]): readonly PathChunk[] =>
  contours.flatMap((contour) => chunksOf(contour, true));

export const chainChunks = (chains: readonly Chain[]): readonly PathChunk[] =>
  chains.flatMap((chain) => chunksOf(chain, false));

/** Many short runs, several to a chunk: a drawing of single lines has hundreds of thousands. */
export function runChunks(runs: Iterable<readonly Vertex[]>): readonly PathChunk[] {
  const chunks: PathChunk[] = [];
  let open: { path: Path2D; box: Box; origin: Point; count: number } | null = null;
  for (const run of runs) {
    const [first] = run;
    if (!first) continue;
    open ??= { path: new Path2D(), box: pointBox(first), origin: first, count: 0 };
    const { path, origin } = open;
    path.moveTo(first.x - origin.x, first.y - origin.y);
    for (let i = 0; i + 1 < run.length; i++) {
      const [from, to] = [run[i] as Vertex, run[i + 1] as Vertex];
      addSegment(path, from, to, origin);
      open.box = boxAround(open.box, segmentBox(from, to));
      open.count++;
    }
    if (open.count < chunkLength) continue;
    chunks.push({ box: open.box, origin: open.origin, path: open.path });
    open = null;
  }
  if (open) chunks.push({ box: open.box, origin: open.origin, path: open.path });
  return chunks;
}

const pointBox = ({ x, y }: Point): Box => ({ minX: x, minY: y, maxX: x, maxY: y });

/** All loops of a region as one path, to be filled. */
export function regionChunk(contours: readonly Contour[]): PathChunk | null {
  const chunks = contourChunks(contours);
  const first = chunks[0];
  if (!first) return null;
  const path = new Path2D();
  for (const contour of contours) addContour(path, contour, first.origin);
  return { box: chunks.map(({ box }) => box).reduce(boxAround), origin: first.origin, path };
}

export interface Stroke {
  readonly color: string;
  /** Pixels. */
  readonly width: number;
  readonly dash?: readonly number[];
}

/** Strokes the chunks that are on the canvas. */
export function strokeChunks(
  context: CanvasRenderingContext2D,
  view: View,
  chunks: readonly PathChunk[],
  stroke: Stroke,
): void {
  const { scale } = view.viewport;
  context.save();
  context.strokeStyle = stroke.color;
  context.lineWidth = stroke.width / scale;
  context.lineJoin = 'round';
  context.setLineDash((stroke.dash ?? []).map((pixels) => pixels / scale));
  // What the chunks share is set once: a large drawing has thousands, and each of the calls costs as much as a short path.
  const { a, d, e, f } = context.getTransform();
  for (const { box, origin, path } of chunks) {
    if (!boxesMeet(box, view.visible)) continue;
    const at = toScreen(view.viewport, view.size, origin);
    context.setTransform(a * scale, 0, 0, -d * scale, e + a * at.x, f + d * at.y);
    context.stroke(path);
  }
  context.restore();
}

function chunksOf(vertices: readonly Vertex[], closed: boolean): PathChunk[] {
  const chunks: PathChunk[] = [];
  const segments = closed ? vertices.length : vertices.length - 1;
  for (let start = 0; start < segments; start += chunkLength) {
    const origin = vertices[start] as Vertex;
    const path = new Path2D();
    path.moveTo(0, 0);
    let box = pointBox(origin);
    for (let i = start; i < Math.min(start + chunkLength, segments); i++) {
      const from = vertices[i] as Vertex;
      const to = vertices[(i + 1) % vertices.length] as Vertex;
      addSegment(path, from, to, origin);
      box = boxAround(box, segmentBox(from, to));
    }
    chunks.push({ box, origin, path });
  }
  return chunks;
}
