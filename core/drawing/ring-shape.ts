import type { Box, Contour, Vertex } from '../geometry/contour';
import { contourArea } from '../geometry/contour-measures';
import { ringBox } from './chain-box';
import { comparePoints } from './compare-points';

export interface RingShape {
  readonly contour: Contour;
  readonly box: Box;
  /** mm², positive. */
  readonly area: number;
}

/** The contour of vertices: counter-clockwise, from the leftmost (then lowest) vertex on. */
export function ringShape(vertices: readonly Vertex[]): RingShape {
  const area = contourArea(vertices);
  const contour = area < 0 ? turnedFromFirst(vertices) : fromFirst(vertices);
  return { contour, area: Math.abs(area), box: ringBox(contour) };
}

function fromFirst(vertices: readonly Vertex[]): Contour {
  let first = 0;
  for (let i = 1; i < vertices.length; i++) if (comparePoints(vertices[i], vertices[first]) < 0) first = i;
  if (first === 0) return vertices;
  const contour = new Array<Vertex>(vertices.length);
  for (let k = 0; k < contour.length; k++) contour[k] = vertices[(first + k) % contour.length] as Vertex;
  return contour;
}

/** The other way round: a segment's bulge then stands at its other end, with the other sign. */
function turnedFromFirst(vertices: readonly Vertex[]): Contour {
  const count = vertices.length;
  let first = count - 1;
  for (let i = count - 2; i >= 0; i--) if (comparePoints(vertices[i], vertices[first]) < 0) first = i;
  const contour = new Array<Vertex>(count);
  for (let k = 0; k < count; k++) {
    const vertex = vertices[(first + count - k) % count] as Vertex;
    const { bulge } = vertices[(first + 2 * count - k - 1) % count] as Vertex;
    contour[k] =
      bulge === 0 && vertex.bulge === 0
        ? vertex
        : { x: vertex.x, y: vertex.y, bulge: bulge === 0 ? 0 : -bulge };
  }
  return contour;
}
