import type { Contour, Point, Vertex } from '../geometry/contour';
import { arcOf } from '../geometry/contour-measures';
import { cornerTurn, turnBetween } from '../geometry/segment-turn';
import { carrierOf, footOn, meetingOf, parallelCarrier, type Carrier } from './taper-carriers';
import * as portable from '../geometry/portable-math';

/**
 * One stretch of a ruled surface: a segment below and the one above it that is run in the same time. A stretch about
 * an edge of a cone has no length below.
 */
export interface TaperPair {
  readonly lower: Vertex;
  readonly upper: Vertex;
}

/** Closed like a contour: the last pair's segments lead back to the first pair's vertices. */
export type TaperLoop = readonly TaperPair[];

export type TaperCorners = 'conical' | 'constant radius';

export type TaperResult =
  | { readonly ok: true; readonly loop: TaperLoop }
  /** A place that the taper cannot get round: an edge or radius too small for it. */
  | { readonly ok: false; readonly at: Point };

/**
 * The loop that a taper makes of a counter-clockwise one: every edge `growth` mm farther out (less than 0: in), each
 * stretch with the one that it comes from. Edges stay parallel, so that the wire moves in planes and cones.
 *
 * Conical corners keep their centre and their angle to the vertical, so that radii grow with the opening, and a sharp
 * inside corner becomes the edge of a cone. Corners of constant radius move outwards whole: the wire leans more there,
 * by 1 / cos(turn / 2), and sharp corners stay sharp. Outside corners whose radius the taper uses up move whole in
 * either case: that is how two tapered faces meet in an edge.
 */
export function taperedLoop(lower: Contour, growth: number, corners: TaperCorners): TaperResult {
  const count = lower.length;
  const at = (i: number): Vertex => lower[(i + count) % count] as Vertex;
  const carriers = lower.map((from, i) => carrierOf(from, at(i + 1)));
  const uppers = carriers.map((carrier) => parallelCarrier(carrier, growth));
  const carrier = (i: number): Carrier => carriers[(i + count) % count] as Carrier;
  const upper = (i: number): Carrier | null => uppers[(i + count) % count] ?? null;
  const moves = lower.map((_, i) => movesWhole(lower, i, growth, corners));

  /** Where segment i starts and ends above. */
  const starts: (Point | null)[] = lower.map(() => null);
  const ends: (Point | null)[] = lower.map(() => null);
  const cones = new Map<number, number>();

  for (let i = 0; i < count; i++) {
    if (!moves[i]) continue;
    const [before, after] = [upper(i - 1), upper(i + 1)];
    const own = carrier(i);
    const isSmooth = [i, i + 1].every(
      (k) => Math.abs(turnBetween(at(k - 1), at(k), at(k + 1))) <= cornerTurn,
    );
    if (
      !before ||
      !after ||
      !isSmooth ||
      own.kind === 'line' ||
      moves[(i + count - 1) % count] ||
      moves[(i + 1) % count]
    )
      return { ok: false, at: at(i) };
    const aside = -own.sense * own.radius;
    const [a, b] = [parallelCarrier(before, aside), parallelCarrier(after, aside)];
    const centre = a && b && meetingOf(a, b, own.centre);
    if (!centre) return { ok: false, at: at(i) };
    starts[i] = ends[(i + count - 1) % count] = footOn(before, centre);
    ends[i] = starts[(i + 1) % count] = footOn(after, centre);
  }
  for (let i = 0; i < count; i++) {
    const next = (i + 1) % count;
    if (ends[i] && starts[next]) continue;
    const vertex = at(next);
    const turn = turnBetween(at(i), vertex, at(i + 2));
    const [a, b] = [upper(i), upper(next)];
    if (!a || !b) return { ok: false, at: vertex };
    if (turn > cornerTurn && !staysSharp(carrier(i), carrier(next), turn, corners)) {
      ends[i] = footOn(a, vertex);
      starts[next] = footOn(b, vertex);
      cones.set(next, turn);
      continue;
    }
    const meeting = Math.abs(turn) <= cornerTurn ? smoothJoint(a, b, vertex) : meetingOf(a, b, vertex);
    if (!meeting) return { ok: false, at: vertex };
    ends[i] = starts[next] = meeting;
  }

  const loop: TaperPair[] = [];
  for (let i = 0; i < count; i++) {
    const [start, end] = [starts[i] as Point, ends[i] as Point];
    const cone = cones.get(i);
    if (cone !== undefined) {
      const from = ends[(i + count - 1) % count] as Point;
      loop.push({ lower: { ...at(i), bulge: 0 }, upper: { ...from, bulge: portable.tan(cone / 4) } });
    }
    const bulge = bulgeAbove(at(i), carrier(i), upper(i), moves[i] === true, start, end);
    if (bulge === null) return { ok: false, at: at(i) };
    loop.push({ lower: at(i), upper: { ...start, bulge } });
  }
  return { ok: true, loop };
}

/** Whether an arc keeps its radius and moves out with its edges. */
function movesWhole(lower: Contour, i: number, growth: number, corners: TaperCorners): boolean {
  const count = lower.length;
  const from = lower[i] as Vertex;
  if (from.bulge === 0) return false;
  const to = lower[(i + 1) % count] as Vertex;
  const { radius } = arcOf(from, to);
  if (radius + Math.sign(from.bulge) * growth <= 0) return true;
  if (corners === 'conical' || 4 * portable.atan(Math.abs(from.bulge)) > greatestTurn) return false;
  const isEdge = (a: Vertex, b: Vertex): boolean =>
    a.bulge * from.bulge <= 0 || arcOf(a, b).radius >= edgeShare * radius;
  return (
    isEdge(lower[(i + count - 1) % count] as Vertex, from) && isEdge(to, lower[(i + 2) % count] as Vertex)
  );
}

/** Corners of constant radius lean the wire by 1 / cos(turn / 2) more; beyond this turn they are conical. */
const greatestTurn = (150 * Math.PI) / 180;
/** An arc is a corner where its neighbours are at least this much larger. */
const edgeShare = 3;

const staysSharp = (a: Carrier, b: Carrier, turn: number, corners: TaperCorners): boolean =>
  corners === 'constant radius' && a.kind === 'line' && b.kind === 'line' && turn <= greatestTurn;

/** Edges that go on smoothly have one point above the joint, on both as well as a drawing's rounding allows. */
function smoothJoint(a: Carrier, b: Carrier, vertex: Point): Point {
  const [p, q] = [footOn(a, vertex), footOn(b, vertex)];
  return { x: (p.x + q.x) / 2, y: (p.y + q.y) / 2 };
}

/** The bulge above; null where the segment would run backwards: the edge is too short for the taper. */
function bulgeAbove(
  lower: Vertex,
  own: Carrier,
  above: Carrier | null,
  movedWhole: boolean,
  start: Point,
  end: Point,
): number | null {
  if (own.kind === 'line') {
    const along = (end.x - start.x) * own.direction.x + (end.y - start.y) * own.direction.y;
    return along > 0 ? 0 : null;
  }
  const centre = movedWhole ? null : above?.kind === 'circle' ? above.centre : null;
  // A whole arc between lines keeps its turn; one between arcs is told by its ends and its radius.
  const turn = centre
    ? turnAbout(centre, start, end, own.sense)
    : turnOfChord(start, end, own.radius, lower.bulge);
  const half = 4 * portable.atan(Math.abs(lower.bulge));
  // Running backwards shows as nearly a whole turn.
  return turn > 0 && turn < half + Math.PI / 2 ? own.sense * portable.tan(turn / 4) : null;
}

function turnAbout(centre: Point, start: Point, end: Point, sense: 1 | -1): number {
  const [ax, ay] = [start.x - centre.x, start.y - centre.y];
  const [bx, by] = [end.x - centre.x, end.y - centre.y];
  const angle = sense * portable.atan2(ax * by - ay * bx, ax * bx + ay * by);
  return angle < 0 ? angle + 2 * Math.PI : angle;
}

function turnOfChord(start: Point, end: Point, radius: number, bulge: number): number {
  const chord = Math.hypot(end.x - start.x, end.y - start.y);
  const turn = 2 * portable.asin(Math.min(1, chord / (2 * radius)));
  return Math.abs(bulge) > 1 ? 2 * Math.PI - turn : turn;
}
