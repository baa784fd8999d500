import type { Point } from '../geometry/contour';
import { radiusOf, type PlainMove } from './beside-move';

/**
 * Where a move is first left for the one that follows it, both drawn out as lines and circles: of all points that
 * they have in common the one nearest to the corner. Null where they have none.
 */
export function meetingOfMoves(first: PlainMove, second: PlainMove, corner: Point): Point | null {
  const all =
    first.centre && second.centre
      ? circlesMeet(first.centre, radiusOf(first), second.centre, radiusOf(second))
      : first.centre
        ? lineMeetsCircle(second, first.centre, radiusOf(first))
        : second.centre
          ? lineMeetsCircle(first, second.centre, radiusOf(second))
          : linesMeet(first, second);
  let nearest: Point | null = null;
  for (const point of all) {
    if (!nearest || apart(point, corner) < apart(nearest, corner)) nearest = point;
  }
  return nearest;
}

function linesMeet(a: PlainMove, b: PlainMove): Point[] {
  const [ax, ay] = [a.to.x - a.from.x, a.to.y - a.from.y];
  const [bx, by] = [b.to.x - b.from.x, b.to.y - b.from.y];
  const cross = ax * by - ay * bx;
  if (cross === 0) return [];
  const share = ((b.from.x - a.from.x) * by - (b.from.y - a.from.y) * bx) / cross;
  return [{ x: a.from.x + ax * share, y: a.from.y + ay * share }];
}

function lineMeetsCircle({ from, to }: PlainMove, centre: Point, radius: number): Point[] {
  const length = apart(from, to);
  if (length === 0) return [];
  const [x, y] = [(to.x - from.x) / length, (to.y - from.y) / length];
  const along = (centre.x - from.x) * x + (centre.y - from.y) * y;
  const foot = { x: from.x + x * along, y: from.y + y * along };
  const square = radius * radius - (centre.x - foot.x) ** 2 - (centre.y - foot.y) ** 2;
  if (square < 0) return [];
  const half = Math.sqrt(square);
  return [
    { x: foot.x - x * half, y: foot.y - y * half },
    { x: foot.x + x * half, y: foot.y + y * half },
  ];
}

function circlesMeet(a: Point, radiusA: number, b: Point, radiusB: number): Point[] {
  const distance = apart(a, b);
  if (distance === 0) return [];
  const along = (distance * distance + radiusA * radiusA - radiusB * radiusB) / (2 * distance);
  const square = radiusA * radiusA - along * along;
  if (square < 0) return [];
  const half = Math.sqrt(square);
  const [x, y] = [(b.x - a.x) / distance, (b.y - a.y) / distance];
  const foot = { x: a.x + x * along, y: a.y + y * along };
  return [
    { x: foot.x - y * half, y: foot.y + x * half },
    { x: foot.x + y * half, y: foot.y - x * half },
  ];
}

const apart = (a: Point, b: Point): number => Math.hypot(a.x - b.x, a.y - b.y);
