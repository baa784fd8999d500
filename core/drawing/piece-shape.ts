import { arcShape, circleShape, ellipseShape } from './conic-shape';
import { pointOf, type Groups } from './group-values';
import { hatchShape } from './hatch-shape';
import { mlineShape } from './mline-shape';
import type { ParsedEntity } from './parse-entities';
import { fourCornerShape, lightPolylineShape, polylineShape } from './polyline-shape';
import { incomplete, isTilted, oneRun, tilted, type PieceShape } from './shape';
import { splineShape } from './spline-shape';
import { moved, type Transform } from './transform';

/** Turns an entity into lines, arcs, ellipses and splines, placed by `place` (the blocks it sits in). */
export function pieceShape(entity: ParsedEntity, place: Transform): PieceShape {
  const { groups } = entity;
  switch (entity.kind) {
    case 'LINE':
      return lineShape(groups, place);
    case 'CIRCLE':
      return circleShape(groups, place, 0, 2 * Math.PI);
    case 'ARC':
      return arcShape(groups, place);
    case 'ELLIPSE':
      return ellipseShape(groups, place);
    case 'LWPOLYLINE':
      return lightPolylineShape(groups, place);
    case 'POLYLINE':
      return polylineShape(entity, place);
    case 'SPLINE':
      return splineShape(groups, place);
    case 'MLINE':
      return mlineShape(groups, place);
    case 'HATCH':
      return hatchShape(groups, place);
    case 'SOLID':
    case 'TRACE':
      return fourCornerShape(groups, place);
    default:
      return { reason: 'kind that is not read' };
  }
}

function lineShape(groups: Groups, place: Transform): PieceShape {
  const from = pointOf(groups, 10);
  const to = pointOf(groups, 11);
  if (!from || !to) return { reason: incomplete };
  const [a, b] = [moved(place, from), moved(place, to)];
  if (a.z !== b.z && isTilted([a, b])) return { reason: tilted };
  const chain = [
    { x: a.x, y: a.y, bulge: 0 },
    { x: b.x, y: b.y, bulge: 0 },
  ];
  return oneRun(false, [{ type: 'chain', chain }]);
}
