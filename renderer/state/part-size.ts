import { mmPerInch, type DisplayUnit } from '../../core/units';

/** "23.5 × 12 mm", to four figures: enough to know a part by. Width and height in mm. */
export function partSize(
  { width, height }: { readonly width: number; readonly height: number },
  unit: DisplayUnit,
): string {
  const side = (mm: number) => String(Number((unit === 'inch' ? mm / mmPerInch : mm).toPrecision(4)));
  return `${side(width)} × ${side(height)} ${unit === 'inch' ? 'in' : 'mm'}`;
}
