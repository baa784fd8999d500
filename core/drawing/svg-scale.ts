import { mmPerInch, type DrawingUnit } from '../units';
import { flat, numbersIn } from './svg-transform';
import type { Transform } from './transform';

/**
 * How user units become drawing units, y turned up, and the unit they then have. A width in a real unit gives mm by the
 * view box (SVG 1.1, 7.7 to 7.8; the smaller scale counts where the two differ, as `meet` wants it); a width in px, %
 * or none at all says nothing of the size.
 */
export function svgScale(attributes: ReadonlyMap<string, string>): {
  readonly place: Transform;
  readonly unit: DrawingUnit | null;
} {
  const width = realLength(attributes.get('width'));
  const height = realLength(attributes.get('height'));
  const box = numbersIn(attributes.get('viewBox') ?? '');
  const [, , boxWidth = Number.NaN, boxHeight = Number.NaN] = box;
  const isBox = box.length === 4 && boxWidth > 0 && boxHeight > 0;
  const scales: number[] = [];
  if (width !== null) scales.push(isBox ? width / boxWidth : mmPerPixel);
  if (height !== null) scales.push(isBox ? height / boxHeight : mmPerPixel);
  const scale = Math.min(...scales);
  if (!Number.isFinite(scale) || scale <= 0) return { place: flat(1, 0, 0, -1, 0, 0), unit: null };
  return { place: flat(scale, 0, 0, -scale, 0, 0), unit: 'mm' };
}

/** Without a view box a user unit is a CSS pixel: 96 to the inch (CSS Values and Units, "Absolute lengths"). */
const mmPerPixel = mmPerInch / 96;

const units: Readonly<Record<string, number>> = {
  mm: 1,
  cm: 10,
  in: mmPerInch,
  pt: mmPerInch / 72,
  pc: mmPerInch / 6,
};

/** mm; null where it is no length in a real unit. */
function realLength(text: string | undefined): number | null {
  const found = /^\s*([-+.\deE]+?)\s*(mm|cm|in|pt|pc)\s*$/.exec(text ?? '');
  const [value = Number.NaN] = numbersIn(found?.[1] ?? '');
  const unit = units[found?.[2] ?? ''];
  return unit !== undefined && value > 0 ? value * unit : null;
}
