import type { Repair } from '../../../core/drawing/drawing';
import { formatLength, type DisplayUnit } from '../../../core/units';
import { repairNames } from '../../state/repair-names';
import { sameTarget, targetOfRepair, type Target } from '../../state/target';
import { toScreen, type ScreenPoint } from '../../state/viewport';
import type { View } from '../drawing-space';

/** A small ring at every repair, and the one picked out or pointed at with its kind and size beside it. */
export function drawRepairs(
  context: CanvasRenderingContext2D,
  repairs: readonly Repair[],
  view: View,
  unit: DisplayUnit,
  picked: { readonly hovered: Target | null; readonly selected: Target | null },
): void {
  context.setLineDash([]);
  const named: { at: ScreenPoint; repair: Repair; isSelected: boolean }[] = [];
  for (const repair of repairs) {
    const at = toScreen(view.viewport, view.size, repair.place);
    if (!isOn(at, view)) continue;
    const target = targetOfRepair(repair);
    const isSelected = sameTarget(target, picked.selected);
    const ofKind: Target = { kind: 'repairs', repair: repair.kind };
    const isMeant = isSelected || sameTarget(target, picked.hovered) || sameTarget(ofKind, picked.hovered);
    ring(
      context,
      at,
      isMeant ? 7 : 4.5,
      isMeant ? view.palette.focus : view.palette.decide,
      isMeant ? 2.5 : 1.5,
    );
    if (isSelected || sameTarget(target, picked.hovered)) named.push({ at, repair, isSelected });
  }
  for (const { at, repair } of named)
    label(context, at, `${repairNames[repair.kind]}: ${formatLength(repair.size, unit)}`, view);
}

/** The places of some gaps: those whose bar in the histogram is pointed at, or all that keep an outline open. */
export function drawGapPlaces(
  context: CanvasRenderingContext2D,
  places: readonly { readonly x: number; readonly y: number }[],
  view: View,
  color: string,
): void {
  context.setLineDash([]);
  for (const place of places) {
    const at = toScreen(view.viewport, view.size, place);
    if (isOn(at, view)) ring(context, at, 7, color, 2.5);
  }
}

const isOn = ({ x, y }: ScreenPoint, { size }: View): boolean =>
  x > -10 && y > -10 && x < size.width + 10 && y < size.height + 10;

function ring(
  context: CanvasRenderingContext2D,
  { x, y }: ScreenPoint,
  radius: number,
  color: string,
  width: number,
): void {
  context.strokeStyle = color;
  context.lineWidth = width;
  context.beginPath();
  context.arc(x, y, radius, 0, 2 * Math.PI);
  context.stroke();
}

function label(context: CanvasRenderingContext2D, at: ScreenPoint, text: string, view: View): void {
  context.font = '12px system-ui, sans-serif';
  context.textAlign = 'left';
  context.textBaseline = 'middle';
  const width = context.measureText(text).width;
  // On the side that has room.
  const left = at.x + 14 + width > view.size.width ? at.x - 14 - width : at.x + 14;
  context.globalAlpha = 0.9;
  context.fillStyle = view.palette.paper;
  context.fillRect(left - 4, at.y - 10, width + 8, 20);
  context.globalAlpha = 1;
  context.fillStyle = view.palette.ink;
  context.fillText(text, left, at.y);
}
