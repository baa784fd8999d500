import type { Repair, RepairKind } from '../../core/drawing/drawing';

/** What a person points at or has picked, on the canvas or in a list alike. */
export type Target =
  | { readonly kind: 'finding'; readonly key: string }
  | { readonly kind: 'member'; readonly id: string }
  | { readonly kind: 'contour'; readonly id: string }
  /** One repair of the drawing, by its place, or all of one kind. */
  | { readonly kind: 'repair'; readonly repair: RepairKind; readonly x: number; readonly y: number }
  | { readonly kind: 'repairs'; readonly repair: RepairKind }
  /** The lines on a layer or in a colour. */
  | { readonly kind: 'layer'; readonly layer: string }
  | { readonly kind: 'colour'; readonly colour: number }
  /** A line of the program that is shown. */
  | { readonly kind: 'line'; readonly line: number }
  /** The ends whose gap falls into one bar of the histogram. */
  | { readonly kind: 'gaps'; readonly bar: number };

export function sameTarget(a: Target | null, b: Target | null): boolean {
  if (a === b) return true;
  if (!a || !b || a.kind !== b.kind) return false;
  const fields = Object.keys(a) as (keyof Target)[];
  return fields.every((field) => a[field] === b[field]);
}

export const targetOfRepair = ({ kind, place: { x, y } }: Repair): Target => ({
  kind: 'repair',
  repair: kind,
  x,
  y,
});
