import makerjsModule from 'makerjs';
import type { Contour, Region, Vertex } from '../../../core/geometry/contour';
import { arcOf } from '../../../core/geometry/contour-measures';
import type { Peer } from './peer';

/** makerjs: lines and arcs in and out, outlines made by expanding every path and joining them all. */
export const makerjs: Peer = {
  name: 'makerjs',
  takesChords: false,
  prepare: (outline) => {
    const model: makerjsModule.IModel = { paths: pathsOf(outline) };
    return Promise.resolve((distance) => {
      const result = makerjsModule.model.outline(model, Math.abs(distance), roundJoints, distance < 0);
      return () => readModel(result);
    });
  },
};

const roundJoints = 0;
const degrees = 180 / Math.PI;

function pathsOf(outline: Contour): Record<string, makerjsModule.IPath> {
  const { Arc, Line } = makerjsModule.paths;
  return Object.fromEntries(
    outline.map((from, i): [string, makerjsModule.IPath] => {
      const to = outline[(i + 1) % outline.length] as Vertex;
      if (from.bulge === 0) return [`segment${i}`, new Line([from.x, from.y], [to.x, to.y])];
      const { cx, cy, radius } = arcOf(from, to);
      const [a, b] = [from, to].map(({ x, y }) => Math.atan2(y - cy, x - cx) * degrees) as [number, number];
      // Its arcs run counter-clockwise.
      return [
        `segment${i}`,
        from.bulge > 0 ? new Arc([cx, cy], radius, a, b) : new Arc([cx, cy], radius, b, a),
      ];
    }),
  );
}

/** Each chain of paths as a contour, in the direction in which it is found. */
function readModel(model: makerjsModule.IModel): Region {
  const chains = makerjsModule.model.findChains(model) as makerjsModule.IChain[];
  return chains.map(({ links }) =>
    links.map(({ walkedPath, reversed, endPoints }) => {
      const [start] = endPoints;
      const [x, y] = [start?.[0] ?? NaN, start?.[1] ?? NaN];
      const path = walkedPath.pathContext;
      if (!makerjsModule.isPathArc(path)) return { x, y, bulge: 0 };
      const turn = makerjsModule.angle.ofArcSpan(path as makerjsModule.IPathArc) / degrees;
      return { x, y, bulge: (reversed ? -1 : 1) * Math.tan(turn / 4) };
    }),
  );
}
