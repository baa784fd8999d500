import type { Point } from '../../geometry/contour';
import { formatLength, mmPerInch } from '../../units';
import { writeText } from './paper';
import { setStroke, type PaperView } from './paper-view';
import * as portable from '../../geometry/portable-math';

/** A bar of a round length of the part, at most 40 mm on paper, its right end at a place of the paper. */
export function scaleBar(view: PaperView, end: Point, units: string): void {
  const perUnit = units === 'inch' ? mmPerInch : 1;
  const length = roundLength(longest / view.scale / perUnit) * perUnit;
  const { doc } = view.paper;
  const start = end.x - length * view.scale;
  setStroke(view.paper, { colour: '#000000', width: 0.25 });
  doc.line(start, end.y, end.x, end.y);
  for (const x of [start, end.x]) doc.line(x, end.y - 1.2, x, end.y);
  const text = formatLength(length, units === 'inch' ? 'inch' : 'mm');
  writeText(view.paper, text, (start + end.x) / 2, end.y - 1.2, { size: 6.5, align: 'center' });
}

const longest = 40;

/** The largest of 1, 2 and 5 times a power of ten that is no more. */
export function roundLength(most: number): number {
  const power = portable.powerOfTen(portable.decadeOf(most));
  const factor = [5, 2, 1].find((candidate) => candidate * power <= most) ?? 1;
  return factor * power;
}
