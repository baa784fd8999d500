import type { StartHole } from '../../core/plan';
import type { ShownProgram } from '../replay/shown-program';
import { placeAt, type ReplayPlace } from '../replay/timeline';
import { toScreen } from '../state/viewport';
import { boxesMeet, inDrawingSpace, type View } from './drawing-space';
import { moveChunk, moveChunks, movesInChunk } from './move-chunks';
import { regionChunk, type PathChunk } from './path-chunk';
import { membersOf } from '../../core/wire/members-of';

/**
 * The block with what the wire has taken out of it so far, and the wire's way through it. Kept as two pictures beside the
 * screen, to which every moment adds only what was cut since the last one; they begin anew when the view, the program or
 * the colours change, or the clock goes back.
 */
export class RemovedStock {
  private readonly stock = document.createElement('canvas');
  private readonly trail = document.createElement('canvas');
  private shown: { readonly view: View; readonly program: ShownProgram; readonly time: number } | null = null;
  private chunks: readonly (PathChunk | null)[] = [];

  draw(context: CanvasRenderingContext2D, view: View, program: ShownProgram, time: number): void {
    const { shown } = this;
    const isOn = shown !== null && shown.view === view && shown.program === program && shown.time <= time;
    if (shown?.program !== program) this.chunks = moveChunks(program.timeline);
    if (!isOn) this.begin(view, program);
    this.cut(view, program, isOn ? shown.time : 0, time);
    this.shown = { view, program, time };
    for (const canvas of [this.stock, this.trail]) {
      context.drawImage(canvas, 0, 0, view.size.width, view.size.height);
    }
  }

  private begin(view: View, program: ShownProgram): void {
    for (const canvas of [this.stock, this.trail]) {
      const { devicePixelRatio: ratio } = window;
      // Setting the size empties it.
      canvas.width = Math.ceil(view.size.width * ratio);
      canvas.height = Math.ceil(view.size.height * ratio);
      contextOf(canvas).setTransform(ratio, 0, 0, ratio, 0, 0);
    }
    const context = contextOf(this.stock);
    drawBlock(context, view, program);
    context.globalAlpha = 0.45;
    for (const chunk of this.chunks)
      if (chunk) strokeChunk(context, view, chunk, view.palette.ink, 1 / view.viewport.scale);
    context.globalAlpha = 1;
  }

  /** Takes out what is cut between two times. */
  private cut(view: View, program: ShownProgram, since: number, until: number): void {
    if (until <= since) return;
    const { timeline, kerfRadius, loose } = program;
    const stock = contextOf(this.stock);
    for (const { loop, time } of loose) {
      if (since <= time && time < until) takeOut(stock, view, regionChunk([loop]));
    }
    const trail = contextOf(this.trail);
    for (const chunk of this.between(timeline, placeAt(timeline, since), placeAt(timeline, until))) {
      stock.globalCompositeOperation = 'destination-out';
      strokeChunk(stock, view, chunk, '#000', 2 * kerfRadius);
      stock.globalCompositeOperation = 'source-over';
      strokeChunk(trail, view, chunk, view.palette.ink, 1.25 / view.viewport.scale);
    }
  }

  /** The feeds between two places: whole chunks as they lie ready, what is left of both ends made for it. */
  private *between(
    timeline: ShownProgram['timeline'],
    from: ReplayPlace,
    to: ReplayPlace,
  ): Iterable<PathChunk> {
    const whole = Math.ceil((from.move + 1) / movesInChunk);
    const last = Math.floor(to.move / movesInChunk);
    const parts = [];
    if (whole >= last) parts.push(moveChunk(timeline, from.move, to.move + 1, to.share, from.share));
    else {
      parts.push(moveChunk(timeline, from.move, whole * movesInChunk, 1, from.share));
      parts.push(...this.chunks.slice(whole, last));
      parts.push(moveChunk(timeline, last * movesInChunk, to.move + 1, to.share));
    }
    for (const part of parts) if (part) yield part;
  }
}

function contextOf(canvas: HTMLCanvasElement): CanvasRenderingContext2D {
  const context = canvas.getContext('2d');
  if (!context) throw new Error('this browser draws no canvas');
  return context;
}

/** A piece that has come loose and is gone. */
function takeOut(context: CanvasRenderingContext2D, view: View, piece: PathChunk | null): void {
  if (!piece || !boxesMeet(piece.box, view.visible)) return;
  context.globalCompositeOperation = 'destination-out';
  inDrawingSpace(context, view, piece.origin, () => context.fill(piece.path));
  context.globalCompositeOperation = 'source-over';
}

/** Width in mm. */
function strokeChunk(
  context: CanvasRenderingContext2D,
  view: View,
  { box, origin, path }: PathChunk,
  color: string,
  width: number,
): void {
  const grown = {
    minX: box.minX - width,
    minY: box.minY - width,
    maxX: box.maxX + width,
    maxY: box.maxY + width,
  };
  if (!boxesMeet(grown, view.visible)) return;
  inDrawingSpace(context, view, origin, () => {
    context.strokeStyle = color;
    context.lineWidth = width;
    context.lineCap = 'round';
    context.lineJoin = 'round';
    context.stroke(path);
  });
}

/** The whole block, tinted in its member's colour, with its start holes. */
function drawBlock(context: CanvasRenderingContext2D, view: View, program: ShownProgram): void {
  const { plan } = program.made;
  const block = plan.blocks.find(({ id }) => id === program.blockId);
  if (!block) return;
  const { minX, minY, maxX, maxY } = block.outline;
  const corner = toScreen(view.viewport, view.size, { x: minX, y: maxY });
  const { scale } = view.viewport;
  const color = view.palette[block.role];
  context.fillStyle = color;
  context.strokeStyle = color;
  context.globalAlpha = 0.16;
  context.fillRect(corner.x, corner.y, (maxX - minX) * scale, (maxY - minY) * scale);
  context.globalAlpha = 0.7;
  context.lineWidth = 1;
  context.strokeRect(corner.x, corner.y, (maxX - minX) * scale, (maxY - minY) * scale);
  context.globalAlpha = 1;
  const members = membersOf(plan);
  for (const { id, cuts } of members) {
    if (!block.memberIds.includes(id)) continue;
    for (const start of cuts.flatMap(({ starts }) => starts)) if (start) drawHole(context, view, start);
  }
}

function drawHole(context: CanvasRenderingContext2D, view: View, hole: StartHole): void {
  const at = toScreen(view.viewport, view.size, hole);
  context.beginPath();
  context.arc(at.x, at.y, (hole.diameter / 2) * view.viewport.scale, 0, 2 * Math.PI);
  context.globalCompositeOperation = 'destination-out';
  context.fill();
  context.globalCompositeOperation = 'source-over';
  context.strokeStyle = view.palette.ink;
  context.lineWidth = 1;
  context.stroke();
}
