import { chained, unmoved, vector, type Transform } from './transform';
import * as portable from '../geometry/portable-math';

/** The map of an SVG `transform` attribute (SVG 1.1, 7.6); null where it cannot be read. */
export function svgTransform(text: string | undefined): Transform | null {
  if (text === undefined || text.trim() === '') return unmoved;
  let whole = unmoved;
  const pattern = /\s*,?\s*([a-zA-Z]+)\s*\(([^)]*)\)/y;
  let at = 0;
  while (at < text.length && text.slice(at).trim() !== '') {
    pattern.lastIndex = at;
    const found = pattern.exec(text);
    const one = found && oneTransform(found[1] ?? '', numbersIn(found[2] ?? ''));
    if (!one) return null;
    whole = chained(whole, one);
    at = pattern.lastIndex;
  }
  return whole;
}

/** All numbers of a list; one NaN where something in it is none. */
export function numbersIn(text: string): number[] {
  const parts = text.trim().split(/[\s,]+/);
  return text.trim() === '' ? [] : parts.map((part) => (isNumber.test(part) ? Number(part) : Number.NaN));
}

const isNumber = /^[-+]?(\d+\.?\d*|\.\d+)([eE][-+]?\d{1,3})?$/;

function oneTransform(name: string, n: readonly number[]): Transform | null {
  if (n.some((value) => !Number.isFinite(value))) return null;
  const [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0] = n;
  switch (name) {
    case 'matrix':
      return n.length === 6 ? flat(a, b, c, d, e, f) : null;
    case 'translate':
      return n.length === 1 || n.length === 2 ? flat(1, 0, 0, 1, a, b) : null;
    case 'scale':
      return n.length === 1 || n.length === 2 ? flat(a, 0, 0, n.length === 1 ? a : b, 0, 0) : null;
    case 'rotate': {
      const turn = (a * Math.PI) / 180;
      const [cos, sin] =
        a % 90 === 0
          ? [Math.round(portable.cos(turn)), Math.round(portable.sin(turn))]
          : [portable.cos(turn), portable.sin(turn)];
      const turned = flat(cos, sin, -sin, cos, 0, 0);
      if (n.length === 1) return turned;
      if (n.length !== 3) return null;
      return chained(flat(1, 0, 0, 1, b, c), chained(turned, flat(1, 0, 0, 1, -b, -c)));
    }
    case 'skewX':
      return n.length === 1 ? flat(1, 0, portable.tan((a * Math.PI) / 180), 1, 0, 0) : null;
    case 'skewY':
      return n.length === 1 ? flat(1, portable.tan((a * Math.PI) / 180), 0, 1, 0, 0) : null;
    default:
      return null;
  }
}

/** x' = a x + c y + e, y' = b x + d y + f. */
export const flat = (a: number, b: number, c: number, d: number, e: number, f: number): Transform => ({
  x: vector(a, b, 0),
  y: vector(c, d, 0),
  z: vector(0, 0, 1),
  origin: vector(e, f, 0),
});
