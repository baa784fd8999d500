import type { Box, Chain, Contour, Vertex } from '../geometry/contour';

/** The smallest box around a chain, its arcs' bellies included; inside out for an empty one. */
export function chainBox(chain: Chain): Box {
  const { minX, minY, maxX, maxY } = new GrowingBox().addChain(chain, chain.length - 1);
  return { minX, minY, maxX, maxY };
}

/** The same around a ring. */
export function ringBox(ring: Contour): Box {
  const { minX, minY, maxX, maxY } = new GrowingBox().addChain(ring, ring.length);
  return { minX, minY, maxX, maxY };
}

/** A box that grows around what is added. Nothing is made on the way: a drawing has hundreds of thousands of chains. */
export class GrowingBox {
  minX = Infinity;
  minY = Infinity;
  maxX = -Infinity;
  maxY = -Infinity;

  add(x: number, y: number): this {
    if (x < this.minX) this.minX = x;
    if (x > this.maxX) this.maxX = x;
    if (y < this.minY) this.minY = y;
    if (y > this.maxY) this.maxY = y;
    return this;
  }

  /** `segments`: one less than the vertices of a chain, as many as those of a ring. */
  addChain(vertices: readonly Vertex[], segments: number): this {
    for (let i = 0; i < vertices.length; i++) {
      const { x, y, bulge } = vertices[i] as Vertex;
      this.add(x, y);
      if (bulge === 0 || i >= segments) continue;
      const to = vertices[i + 1 === vertices.length ? 0 : i + 1] as Vertex;
      this.addBelly(x, y, to.x, to.y, bulge);
    }
    return this;
  }

  /** Where the arc's circle reaches farther than its ends, on the arc's side of the chord (it is at most a half turn). */
  private addBelly(x0: number, y0: number, x1: number, y1: number, bulge: number): void {
    const [dx, dy] = [x1 - x0, y1 - y0];
    const side = (1 - bulge * bulge) / (4 * bulge);
    const [cx, cy] = [(x0 + x1) / 2 - side * dy, (y0 + y1) / 2 + side * dx];
    const radius = (Math.sqrt(dx * dx + dy * dy) * (1 + bulge * bulge)) / (4 * Math.abs(bulge));
    const isOn = (x: number, y: number): boolean => {
      const cross = dx * (y - y0) - dy * (x - x0);
      return bulge > 0 ? cross <= 0 : cross >= 0;
    };
    if (cx - radius < this.minX && isOn(cx - radius, cy)) this.minX = cx - radius;
    if (cx + radius > this.maxX && isOn(cx + radius, cy)) this.maxX = cx + radius;
    if (cy - radius < this.minY && isOn(cx, cy - radius)) this.minY = cy - radius;
    if (cy + radius > this.maxY && isOn(cx, cy + radius)) this.maxY = cy + radius;
  }
}
