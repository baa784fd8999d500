import type { Band } from '../../../core/inspect/band';
import type { ClearancePlace } from '../../../core/inspect/clearance-place';
import type { PairPlace } from '../../../core/inspect/measured-pair';
import { formatLength, type DisplayUnit } from '../../../core/units';
import { toScreen } from '../../state/viewport';
import type { View } from '../drawing-space';
import type { ClearanceScene, MapScene } from '../inspect-scene';
import { strokeChunks, type Stroke } from '../path-chunk';

/** Punch over die as cut: the designed contours beneath, the die's edge, and the punch's by its clearance. */
export function drawClearance(
  context: CanvasRenderingContext2D,
  scene: MapScene,
  view: View,
  shown: { readonly die: boolean; readonly punch: boolean; readonly designed: boolean },
): void {
  const { die, inkSoft } = view.palette;
  if (shown.designed)
    strokeChunks(context, view, scene.designed, { color: inkSoft, width: 0.75, dash: [2, 3] });
  if (shown.die) strokeChunks(context, view, scene.die, { color: die, width: 1.5 });
  if (!shown.punch) return;
  for (const { band, chunks } of scene.stretches) strokeChunks(context, view, chunks, bandStroke(band, view));
}

/** Thicker the more it matters and dashed where there is too much, so that it reads without colour. */
export function bandStroke(band: Band, { palette }: View): Stroke {
  switch (band) {
    case 'contact':
      return { color: palette.ink, width: 7 };
    case 'tight':
      return { color: palette.punch, width: 5 };
    case 'within':
      return { color: palette.settled, width: 2 };
    case 'wide':
      return { color: palette.wide, width: 4, dash: [9, 5] };
  }
}

/** Where a member was measured, by the clearance there. */
export function drawPairPlaces(
  context: CanvasRenderingContext2D,
  places: readonly PairPlace[],
  view: View,
): void {
  context.setLineDash([]);
  for (const { at, band } of places) {
    const { x, y } = toScreen(view.viewport, view.size, at);
    context.fillStyle = bandStroke(band, view).color;
    context.strokeStyle = view.palette.paper;
    context.lineWidth = 1;
    context.beginPath();
    context.arc(x, y, band === 'within' ? 2.5 : 4.5, 0, 2 * Math.PI);
    context.fill();
    context.stroke();
  }
}

/** A place along the punch with its clearance, the normal drawn long enough to be seen. */
export function drawStation(
  context: CanvasRenderingContext2D,
  place: ClearancePlace,
  view: View,
  unit: DisplayUnit,
  isHeld: boolean,
): void {
  const at = toScreen(view.viewport, view.size, place.at);
  const foot = toScreen(view.viewport, view.size, place.foot);
  const { focus } = view.palette;
  const length = Math.hypot(foot.x - at.x, foot.y - at.y);
  const [ux, uy] = length > 0 ? [(foot.x - at.x) / length, (foot.y - at.y) / length] : [0, -1];
  context.setLineDash([]);
  context.strokeStyle = focus;
  context.lineWidth = isHeld ? 2.5 : 1.5;
  context.beginPath();
  context.arc(at.x, at.y, 5, 0, 2 * Math.PI);
  context.moveTo(at.x - ux * shortest, at.y - uy * shortest);
  context.lineTo(at.x + ux * Math.max(length, shortest), at.y + uy * Math.max(length, shortest));
  context.stroke();
  const words = formatLength(place.clearance, unit);
  label(context, words, { x: at.x + ux * (length + 34), y: at.y + uy * (length + 24) }, view);
}

/** Pixels that the normal is drawn long at least. */
const shortest = 16;

/** Pixels outside the picture from where on words are about nothing in it. */
const beyond = 40;

/** Words on a patch of the paper's colour, so that lines do not run through them; moved in where they would stick out. */
export function label(
  context: CanvasRenderingContext2D,
  words: string,
  wanted: { readonly x: number; readonly y: number },
  { palette, size }: View,
): void {
  const isNear = [wanted.x, size.width - wanted.x, wanted.y, size.height - wanted.y].every(
    (px) => px > -beyond,
  );
  if (!isNear) return;
  context.font = '600 12px system-ui, sans-serif';
  context.textAlign = 'center';
  context.textBaseline = 'middle';
  const width = context.measureText(words).width + 8;
  const at = {
    x: Math.max(width / 2, Math.min(size.width - width / 2, wanted.x)),
    y: Math.max(9, Math.min(size.height - 9, wanted.y)),
  };
  context.globalAlpha = 0.9;
  context.fillStyle = palette.paper;
  context.fillRect(at.x - width / 2, at.y - 9, width, 18);
  context.globalAlpha = 1;
  context.fillStyle = palette.ink;
  context.fillText(words, at.x, at.y + 0.5);
}

/** Where the least and the greatest clearance are: a triangle pointing at the place, with its number. */
export function drawExtremes(
  context: CanvasRenderingContext2D,
  { pair: { map } }: ClearanceScene,
  view: View,
  unit: DisplayUnit,
): void {
  for (const [place, word] of [
    [map.greatest, 'greatest'],
    [map.least, 'least'],
  ] as const) {
    const at = toScreen(view.viewport, view.size, place.at);
    context.fillStyle = view.palette.ink;
    context.beginPath();
    context.moveTo(at.x, at.y - 6);
    context.lineTo(at.x - 5, at.y - 15);
    context.lineTo(at.x + 5, at.y - 15);
    context.closePath();
    context.fill();
    label(context, `${word} ${formatLength(place.clearance, unit)}`, { x: at.x, y: at.y - 25 }, view);
  }
}
