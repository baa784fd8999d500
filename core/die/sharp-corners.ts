import type { Contour, Region, Vertex } from '../geometry/contour';
import { cornerTurn, turnBetween } from '../geometry/segment-turn';
import { squaredDistance, tableOfRegion } from '../geometry/segment-table';
import { tolerance } from '../geometry/tolerance';
import type { MemberRole } from '../plan';
import type { PairCorner } from './corner-radii';
import type { CornerPath } from './corner-rules';

export interface SharpCorner {
  readonly x: number;
  readonly y: number;
  /** Between the directions of the two edges, radians, positive. */
  readonly turn: number;
}

export interface SharpQuery {
  readonly designed: Region;
  readonly role: MemberRole;
  readonly drawn: Contour;
  /** How far the member's contour lies outside the drawn one, mm. */
  readonly offset: number;
  readonly corners: readonly PairCorner[];
  /** The rule for all. */
  readonly path: CornerPath;
}

/**
 * The sharp outside corners of a member round which the wire's path is to be sharp. A corner of the member belongs to
 * the corner of the drawing whose two edges' parallels meet in it; one that belongs to none follows the rule for all.
 */
export function sharpCorners(query: SharpQuery): readonly SharpCorner[] {
  const { designed, role, corners, path } = query;
  const chosen = corners.filter(({ exception }) => exception?.path && exception.path !== path);
  if (path === 'rolling' && chosen.length === 0) return [];
  const table = tableOfRegion([query.drawn]);
  const isOf = ({ x, y }: SharpCorner, { place: { edges } }: PairCorner): boolean =>
    edges.every(
      (edge) =>
        Math.abs(Math.sqrt(squaredDistance(table, edge, x, y)) - Math.abs(query.offset)) <
        tolerance.sameBoundary,
    );
  return designed
    .flatMap((contour) => outsideCorners(contour, role))
    .filter((at) => (chosen.some((corner) => isOf(at, corner)) ? path === 'rolling' : path === 'sharp'));
}

/** A punch's steel lies left of its contour, a die's right of it: outside corners turn towards the steel. */
function outsideCorners(contour: Contour, role: MemberRole): readonly SharpCorner[] {
  return contour.flatMap((at, i) => {
    const before = contour[(i + contour.length - 1) % contour.length] as Vertex;
    const turn = turnBetween(before, at, contour[(i + 1) % contour.length] as Vertex);
    const outward = role === 'punch' ? turn : -turn;
    return outward > cornerTurn ? [{ x: at.x, y: at.y, turn: outward }] : [];
  });
}
