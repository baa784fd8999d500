import type { Chain, Vertex } from './contour';
import { arcOf, segmentLength } from './contour-measures';
import * as portable from './portable-math';

/** The last `length` mm of a chain, in its direction; all of it where it is shorter. Arcs are cut as arcs. */
export function chainTail(chain: Chain, length: number): Chain {
  const tail: Vertex[] = chain.slice(-1);
  let left = length;
  for (let i = chain.length - 2; i >= 0 && left > 0; i--) {
    const [from, to] = [chain[i], chain[i + 1]];
    if (!from || !to) break;
    const size = segmentLength(from, to);
    tail.unshift(size <= left ? from : lastPart(from, to, left / size));
    left -= size;
  }
  return tail;
}

/** Where the last `fraction` of a segment begins, with the bulge that leads from there to its end. */
function lastPart(from: Vertex, to: Vertex, fraction: number): Vertex {
  if (from.bulge === 0) {
    return { x: to.x + (from.x - to.x) * fraction, y: to.y + (from.y - to.y) * fraction, bulge: 0 };
  }
  const { cx, cy } = arcOf(from, to);
  const quarterAngle = portable.atan(from.bulge) * fraction;
  const back = -4 * quarterAngle;
  const [x, y] = [to.x - cx, to.y - cy];
  return {
    x: cx + x * portable.cos(back) - y * portable.sin(back),
    y: cy + x * portable.sin(back) + y * portable.cos(back),
    bulge: portable.tan(quarterAngle),
  };
}
