import type { WireMove } from '../../../core/check/wire-path';
import type { ShownProgram } from '../../replay/shown-program';
import type { ReplayPlace, Timeline } from '../../replay/timeline';
import { toScreen } from '../../state/viewport';
import type { View } from '../drawing-space';
import { moveChunk } from '../move-chunks';
import { strokeChunks } from '../path-chunk';

/** The wire where it is, true to size with the slit that it erodes about it; hollow while it is out. */
export function drawWire(
  context: CanvasRenderingContext2D,
  view: View,
  { timeline, wireRadius, kerfRadius }: ShownProgram,
  place: ReplayPlace,
): void {
  if (place.move < 0) return;
  const { scale } = view.viewport;
  const { ink, paper, focus } = view.palette;
  const at = toScreen(view.viewport, view.size, place.at);
  const isOut = timeline.moves[place.move]?.isRapid === true;
  drawLean(context, view, place, wireRadius);
  context.setLineDash([]);
  context.lineWidth = 1;
  context.strokeStyle = ink;
  if (!isOut) circle(context, at, kerfRadius * scale, 'stroke');
  context.fillStyle = isOut ? paper : ink;
  circle(context, at, wireRadius * scale, 'fill');
  if (isOut) circle(context, at, wireRadius * scale, 'stroke');
  // Far away the wire is smaller than a pixel: a ring tells where to look.
  if (kerfRadius * scale < smallest) {
    context.strokeStyle = focus;
    context.lineWidth = 2;
    circle(context, at, 2 * smallest, 'stroke');
  }
}

/** Pixels. */
const smallest = 4;

/** Where the wire leans, its upper end, hollow, and the line that leads there. */
function drawLean(
  context: CanvasRenderingContext2D,
  view: View,
  { at, lean }: ReplayPlace,
  wireRadius: number,
): void {
  if (lean.x === 0 && lean.y === 0) return;
  const foot = toScreen(view.viewport, view.size, at);
  const head = toScreen(view.viewport, view.size, { x: at.x + lean.x, y: at.y + lean.y });
  context.strokeStyle = view.palette.ink;
  context.lineWidth = 1;
  context.setLineDash([3, 3]);
  context.beginPath();
  context.moveTo(foot.x, foot.y);
  context.lineTo(head.x, head.y);
  context.stroke();
  context.setLineDash([]);
  circle(context, head, wireRadius * view.viewport.scale, 'stroke');
}

/** The moves of one line of the program, picked out or pointed at. */
export function drawLineMoves(
  context: CanvasRenderingContext2D,
  view: View,
  timeline: Timeline,
  line: number | null,
  width: number,
): void {
  if (line === null) return;
  const [first, end] = movesOfLine(timeline.moves, line);
  const chunk = moveChunk(timeline, first, end);
  if (chunk) strokeChunks(context, view, [chunk], { color: view.palette.focus, width });
}

/** Index of the first move of a line and of the first after it; moves stand in the order of lines. */
function movesOfLine(moves: readonly WireMove[], line: number): [number, number] {
  const firstFrom = (wanted: number) => {
    let [low, high] = [0, moves.length];
    while (low < high) {
      const middle = (low + high) >> 1;
      if ((moves[middle] as WireMove).line < wanted) low = middle + 1;
      else high = middle;
    }
    return low;
  };
  return [firstFrom(line), firstFrom(line + 1)];
}

function circle(
  context: CanvasRenderingContext2D,
  { x, y }: { x: number; y: number },
  radius: number,
  way: 'fill' | 'stroke',
): void {
  context.beginPath();
  context.arc(x, y, radius, 0, 2 * Math.PI);
  context[way]();
}
