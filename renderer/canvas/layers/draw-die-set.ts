import type { SectionLine } from '../../../core/die/tool-section';
import type { Point } from '../../../core/geometry/contour';
import type { PicturePart } from '../../state/app-state';
import { toScreen } from '../../state/viewport';
import type { DieSetScene, Disc, ToolName } from '../die-set-scene';
import type { View } from '../drawing-space';
import { strokeChunks } from '../path-chunk';
import { clearLine, type Words } from './clear-line';

/** Die blocks with screws and dowels, the strip, sections with their joints, centres of pressure. */
export function drawDieSet(
  context: CanvasRenderingContext2D,
  scene: DieSetScene,
  view: View,
  isShown: (part: PicturePart) => boolean,
): void {
  const { ink, inkSoft, die, faint } = view.palette;
  if (isShown('strip')) {
    strokeChunks(context, view, scene.blanks, { color: faint, width: 1 });
    strokeChunks(context, view, scene.stripEdges, { color: inkSoft, width: 1.25, dash: [12, 3, 2, 3] });
    for (const pilot of scene.pilots) drawDisc(context, pilot, view, inkSoft);
  }
  if (isShown('die block')) {
    strokeChunks(context, view, scene.blocks, { color: die, width: 1.25 });
    for (const screw of scene.screws) drawDisc(context, screw, view, die);
  }
  if (isShown('sections')) {
    strokeChunks(context, view, scene.sections, { color: ink, width: 0.75 });
    strokeChunks(context, view, scene.joints, { color: ink, width: 2 });
  }
  if (isShown('pressure')) for (const centre of scene.centres) drawCentre(context, centre, view);
  const there: Words[] = [];
  for (const name of scene.names) if (isShown(name.part)) there.push(drawName(context, name, view, there));
}

/**
 * Inside the block's corner, or to the right of the centre, below what is there; on paper, so that it can be read over
 * lines. Returns where it is.
 */
function drawName(
  context: CanvasRenderingContext2D,
  { part, text, ...at }: ToolName,
  view: View,
  there: readonly Words[],
): Words {
  const { x, y } = toScreen(view.viewport, view.size, at);
  const left = part === 'die block' ? x + 6 : x + centreRadius + 8;
  context.font = '12px system-ui, sans-serif';
  const right = left + context.measureText(text).width;
  const words = clearLine({ left, right, middle: part === 'die block' ? y + 12 : y }, there);
  context.textAlign = 'left';
  context.textBaseline = 'middle';
  context.setLineDash([]);
  context.lineWidth = 4;
  context.strokeStyle = view.palette.paper;
  context.strokeText(text, left, words.middle);
  context.fillStyle = part === 'die block' ? view.palette.die : view.palette.ink;
  context.fillText(text, left, words.middle);
  return words;
}

/** Where the section below the picture is taken: a chain line across it, with arrows the way one looks. */
export function drawSectionLine(context: CanvasRenderingContext2D, line: SectionLine, view: View): void {
  const { width, height } = view.size;
  const at = toScreen(view.viewport, view.size, { x: line.at, y: line.at });
  const isLevel = line.runs === 'level';
  const ends = isLevel
    ? [
        { x: arrow, y: at.y },
        { x: width - arrow, y: at.y },
      ]
    : [
        { x: at.x, y: arrow },
        { x: at.x, y: height - arrow },
      ];
  const [from, to] = ends as [Point, Point];
  context.strokeStyle = view.palette.inkSoft;
  context.fillStyle = view.palette.inkSoft;
  context.lineWidth = 1;
  context.setLineDash([14, 4, 2, 4]);
  context.beginPath();
  context.moveTo(from.x, from.y);
  context.lineTo(to.x, to.y);
  context.stroke();
  context.setLineDash([]);
  for (const { x, y } of ends) {
    context.beginPath();
    // One looks up the drawing, or to its left: what is nearer the viewer is cut away.
    context.moveTo(isLevel ? x : x - arrow, isLevel ? y - arrow : y);
    context.lineTo(isLevel ? x - arrow / 2 : x, isLevel ? y : y - arrow / 2);
    context.lineTo(isLevel ? x + arrow / 2 : x, isLevel ? y : y + arrow / 2);
    context.fill();
  }
}

/** Pixels. */
const arrow = 10;

function drawDisc(context: CanvasRenderingContext2D, disc: Disc, view: View, color: string): void {
  const at = toScreen(view.viewport, view.size, disc);
  context.strokeStyle = color;
  context.lineWidth = 1;
  context.setLineDash([]);
  context.beginPath();
  context.arc(at.x, at.y, (disc.diameter / 2) * view.viewport.scale, 0, 2 * Math.PI);
  context.stroke();
}

/** As drawings mark a centre of gravity: a circle, two opposite quarters filled, with a cross through it. */
function drawCentre(context: CanvasRenderingContext2D, centre: Point, view: View): void {
  const { x, y } = toScreen(view.viewport, view.size, centre);
  context.setLineDash([]);
  context.fillStyle = view.palette.paper;
  context.strokeStyle = view.palette.ink;
  context.lineWidth = 1.5;
  context.beginPath();
  context.arc(x, y, centreRadius, 0, 2 * Math.PI);
  context.fill();
  context.fillStyle = view.palette.ink;
  for (const start of [0, Math.PI]) {
    context.beginPath();
    context.moveTo(x, y);
    context.arc(x, y, centreRadius, start, start + Math.PI / 2);
    context.fill();
  }
  context.beginPath();
  context.arc(x, y, centreRadius, 0, 2 * Math.PI);
  context.moveTo(x - centreRadius - 5, y);
  context.lineTo(x + centreRadius + 5, y);
  context.moveTo(x, y - centreRadius - 5);
  context.lineTo(x, y + centreRadius + 5);
  context.stroke();
}

/** Pixels. */
const centreRadius = 8;
