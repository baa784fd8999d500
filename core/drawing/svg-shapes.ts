import { polylineThrough } from './polyline-shape';
import { conicShape } from './conic-shape';
import { incomplete, pointLike, type PieceShape } from './shape';
import type { SvgTag } from './svg-tags';
import { svgPath } from './svg-path';
import { numbersIn } from './svg-transform';
import { moved, turned, vector, type Transform } from './transform';

/** The curves of a basic shape or path of an SVG (SVG 1.1, chapters 8 and 9), placed; or why there are none. */
export function svgShape({ name, attributes }: SvgTag, place: Transform): PieceShape {
  const number = (attribute: string): number => lengthOf(attributes.get(attribute) ?? '0');
  switch (name) {
    case 'path': {
      const { runs, isBroken } = svgPath(attributes.get('d') ?? '', place);
      const remark = isBroken ? 'path data that breaks off at an error; drawn up to there' : null;
      return runs.length > 0
        ? { runs, remark }
        : { reason: isBroken ? 'path data that cannot be read' : pointLike };
    }
    case 'line':
      return through([number('x1'), number('y1'), number('x2'), number('y2')], false, place);
    case 'polyline':
    case 'polygon':
      return through(numbersIn(attributes.get('points') ?? ''), name === 'polygon', place);
    case 'rect':
      return rectangle(number, attributes, place);
    case 'circle':
      return ellipse(number('cx'), number('cy'), number('r'), number('r'), place);
    default:
      return ellipse(number('cx'), number('cy'), number('rx'), number('ry'), place);
  }
}

export const svgShapeNames: ReadonlySet<string> = new Set([
  ...['path', 'line', 'polyline', 'polygon', 'rect', 'circle', 'ellipse'],
]);

/** A length in user units: bare or in px; NaN in other units, which a shape inside a drawing hardly has. */
function lengthOf(text: string): number {
  const [value = Number.NaN] = numbersIn(text.replace(/px\s*$/, ''));
  return value;
}

function through(numbers: readonly number[], closed: boolean, place: Transform): PieceShape {
  if (numbers.length < 2 || numbers.some((value) => !Number.isFinite(value))) return { reason: incomplete };
  const points = [];
  // An odd number at the end has no partner: the standard draws what is before it.
  for (let i = 0; i + 1 < numbers.length; i += 2)
    points.push({ ...vector(numbers[i] as number, numbers[i + 1] as number, 0), bulge: 0 });
  return polylineThrough(points, closed, place);
}

function ellipse(x: number, y: number, rx: number, ry: number, place: Transform): PieceShape {
  if (![x, y, rx, ry].every(Number.isFinite)) return { reason: incomplete };
  if (rx <= 0 || ry <= 0) return { reason: pointLike };
  const [u, v] = [turned(place, vector(rx, 0, 0)), turned(place, vector(0, ry, 0))];
  return conicShape(moved(place, vector(x, y, 0)), u, v, 0, 2 * Math.PI);
}

function rectangle(
  number: (attribute: string) => number,
  attributes: SvgTag['attributes'],
  place: Transform,
): PieceShape {
  const [x, y, width, height] = [number('x'), number('y'), number('width'), number('height')];
  // One radius alone stands for both; none is larger than half the side.
  const stated = (own: string, other: string): number => number(attributes.has(own) ? own : other);
  const rx = Math.min(stated('rx', 'ry'), width / 2);
  const ry = Math.min(stated('ry', 'rx'), height / 2);
  if (![x, y, width, height, rx, ry].every(Number.isFinite)) return { reason: incomplete };
  if (width <= 0 || height <= 0) return { reason: pointLike };
  const [right, top] = [x + width, y + height];
  if (rx <= 0 || ry <= 0) return through([x, y, right, y, right, top, x, top], true, place);
  const arc = (toX: number, toY: number): string => `A${rx} ${ry} 0 0 1 ${toX} ${toY}`;
  const data =
    `M${x + rx} ${y}H${right - rx}${arc(right, y + ry)}V${top - ry}${arc(right - rx, top)}` +
    `H${x + rx}${arc(x, top - ry)}V${y + ry}${arc(x + rx, y)}Z`;
  return { runs: svgPath(data, place).runs, remark: null };
}
