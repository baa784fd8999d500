import type { Linework } from '../../core/drawing/linework';
import type { Box } from '../../core/geometry/contour';

/** Around all lines that the drawing shows, by their ends; null where there are none. */
export function linesBox(lines: readonly Linework[]): Box | null {
  let [minX, minY, maxX, maxY] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const { vertices } of lines.filter(({ hidden }) => hidden === null)) {
    for (let i = 0; i < vertices.length; i += 3) {
      const [x, y] = [vertices[i] as number, vertices[i + 1] as number];
      minX = Math.min(minX, x);
      maxX = Math.max(maxX, x);
      minY = Math.min(minY, y);
      maxY = Math.max(maxY, y);
    }
  }
  return minX <= maxX ? { minX, minY, maxX, maxY } : null;
}
