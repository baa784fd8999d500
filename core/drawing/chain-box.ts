import type { Box, Chain, Contour, Vertex } from '../geometry/contour';
import { segmentBox } from '../geometry/contour-measures';

/** The smallest box around a chain, its arcs' bellies included; inside out for an empty one. */
export const chainBox = (chain: Chain): Box => boxOf(chain, chain.length - 1);

/** The same around a ring. */
export const ringBox = (ring: Contour): Box => boxOf(ring, ring.length);

/** Nothing is made but the box: a drawing has hundreds of thousands of chains. */
function boxOf(vertices: readonly Vertex[], segments: number): Box {
  let [minX, minY, maxX, maxY] = [Infinity, Infinity, -Infinity, -Infinity];
  for (let i = 0; i < vertices.length; i++) {
    const vertex = vertices[i] as Vertex;
    if (vertex.x < minX) minX = vertex.x;
    if (vertex.x > maxX) maxX = vertex.x;
    if (vertex.y < minY) minY = vertex.y;
    if (vertex.y > maxY) maxY = vertex.y;
    if (vertex.bulge === 0 || i >= segments) continue;
    const arc = segmentBox(vertex, vertices[i + 1 === vertices.length ? 0 : i + 1] as Vertex);
    if (arc.minX < minX) minX = arc.minX;
    if (arc.maxX > maxX) maxX = arc.maxX;
    if (arc.minY < minY) minY = arc.minY;
    if (arc.maxY > maxY) maxY = arc.maxY;
  }
  return { minX, minY, maxX, maxY };
}
