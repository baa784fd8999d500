import { toScreen } from '../../state/viewport';
import { boxesMeet, type View } from '../drawing-space';
import { strokeChunks } from '../path-chunk';
import { pointOnSegment } from '../point-on-segment';
import type { MemberPicture, PassPicture, Scene } from '../scene';

/** Wire paths: thin, in ink, with arrowheads; lead-ins and lead-outs fine, the tab heavy, start holes as circles. */
export function drawPaths(
  context: CanvasRenderingContext2D,
  scene: Scene,
  view: View,
  isShown: (picture: MemberPicture) => boolean,
): void {
  const { ink } = view.palette;
  for (const picture of scene.members) {
    if (!isShown(picture)) continue;
    for (const pass of picture.passes) {
      context.globalAlpha = 0.75;
      strokeChunks(context, view, pass.main, { color: ink, width: 0.75 });
      strokeChunks(context, view, pass.leads, { color: ink, width: 0.75 });
      context.globalAlpha = 1;
      // Passes lie hundredths apart: one set of arrowheads speaks for all.
      if (pass.pass === 0) drawArrowheads(context, pass, view);
    }
    strokeChunks(context, view, picture.tabs, { color: ink, width: 3.5 });
    for (const { starts } of picture.cuts) {
      for (const start of starts) if (start) drawStartHole(context, start, view);
    }
  }
}

/** Pixels between arrowheads, and from where on a path is long enough to carry one. */
const arrowSpacing = 160;
const shortestWithArrow = 24;

function drawArrowheads(context: CanvasRenderingContext2D, pass: PassPicture, view: View): void {
  const last = pass.run.at(-1);
  if (!last) return;
  const { scale } = view.viewport;
  const total = last.before + last.length;
  if (total * scale < shortestWithArrow) return;
  // Doublings of one spacing, so that arrowheads keep their places while zooming a little.
  const wanted = arrowSpacing / scale;
  const spacing = Math.min(total / 2, 2 ** Math.round(Math.log2(wanted)));
  context.fillStyle = view.palette.ink;
  for (const segment of pass.run) {
    if (!boxesMeet(segment.box, view.visible)) continue;
    let at = Math.ceil(segment.before / spacing - 0.5) * spacing + spacing / 2;
    if (at < segment.before) at += spacing;
    for (; at < segment.before + segment.length; at += spacing) {
      const place = pointOnSegment(segment.from, segment.to, (at - segment.before) / segment.length);
      const screen = toScreen(view.viewport, view.size, place);
      if (screen.x < 0 || screen.y < 0 || screen.x > view.size.width || screen.y > view.size.height) continue;
      drawArrowhead(context, screen.x, screen.y, -place.heading);
    }
  }
}

function drawArrowhead(context: CanvasRenderingContext2D, x: number, y: number, heading: number): void {
  context.save();
  context.translate(x, y);
  context.rotate(heading);
  context.beginPath();
  context.moveTo(5, 0);
  context.lineTo(-4, -3);
  context.lineTo(-2.5, 0);
  context.lineTo(-4, 3);
  context.closePath();
  context.fill();
  context.restore();
}

function drawStartHole(
  context: CanvasRenderingContext2D,
  hole: { x: number; y: number; diameter: number },
  view: View,
): void {
  const at = toScreen(view.viewport, view.size, hole);
  const radius = (hole.diameter / 2) * view.viewport.scale;
  const arm = Math.min(radius * 0.45, 6);
  context.strokeStyle = view.palette.ink;
  context.lineWidth = 1.25;
  context.setLineDash([]);
  context.beginPath();
  context.arc(at.x, at.y, radius, 0, 2 * Math.PI);
  context.moveTo(at.x - arm, at.y);
  context.lineTo(at.x + arm, at.y);
  context.moveTo(at.x, at.y - arm);
  context.lineTo(at.x, at.y + arm);
  context.stroke();
}
