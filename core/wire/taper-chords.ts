import type { Point, Vertex } from '../geometry/contour';
import { arcOf } from '../geometry/contour-measures';
import { tolerance } from '../geometry/tolerance';
import { pointOfSegment, type TaperChain } from './taper-chain';
import type { TaperPair } from './taper-loop';
import * as portable from '../geometry/portable-math';

export interface ChordWishes {
  /** How far a chord may be from its arc, mm. */
  readonly tolerance: number;
  /** Whether the control runs two arcs about one centre at once. */
  readonly circular: boolean;
}

/**
 * A run with chords for the arcs that a control can't be trusted with. Arcs stay where the wire only moves along (U
 * and V stand still), and where both are about one centre if the control can do that. Chords of inside corners cut
 * off the arc from within and leave stock, those of outside corners go round it and leave stock too: at most the
 * tolerance, and the member is never cut into.
 */
export function chordedPairs(chain: TaperChain, wishes: ChordWishes): TaperChain {
  return chain.flatMap((pair, i) => {
    const next = chain[i + 1];
    return next && needsChords(pair, next, wishes) ? chords(pair, next, wishes.tolerance) : [pair];
  });
}

function needsChords(own: TaperPair, next: TaperPair, { circular }: ChordWishes): boolean {
  if (own.lower.bulge === 0 && own.upper.bulge === 0) return false;
  if (
    own.lower.bulge !== own.upper.bulge &&
    Math.abs(own.lower.bulge - own.upper.bulge) > tolerance.straightBulge
  )
    return true;
  const [start, end] = [leanOf(own), leanOf(next)];
  if (Math.hypot(end.x - start.x, end.y - start.y) <= tolerance.samePoint) return false;
  return !circular;
}

/** Where the upper end is from the lower one: U and V. */
export const leanOf = ({ lower, upper }: TaperPair): Point => ({
  x: upper.x - lower.x,
  y: upper.y - lower.y,
});

function chords(own: TaperPair, next: TaperPair, within: number): TaperPair[] {
  const turn = 4 * portable.atan(own.upper.bulge !== 0 ? own.upper.bulge : own.lower.bulge);
  const radius = Math.max(radiusOf(own.lower, next.lower), radiusOf(own.upper, next.upper));
  const outside = turn < 0;
  // Sagitta r (1 − cos half); round the outside r (1 / cos half − 1).
  const half = portable.acos(outside ? radius / (radius + within) : Math.max(0, 1 - within / radius));
  const count = Math.max(1, Math.ceil(Math.abs(turn) / (2 * half)));
  if (outside) return roundTheOutside(own, next, turn, count);
  return Array.from({ length: count }, (_, k) => pairAt(own, next, k / count));
}

/** Corners of the polygon about the arc whose edges touch it at equal steps, and its ends. */
function roundTheOutside(own: TaperPair, next: TaperPair, turn: number, count: number): TaperPair[] {
  const stretch = 1 / portable.cos(turn / count / 2);
  const corner = (k: number): TaperPair => ({
    lower: outwards(own.lower, next.lower, (k + 0.5) / count, stretch),
    upper: outwards(own.upper, next.upper, (k + 0.5) / count, stretch),
  });
  return [pairAt(own, next, 0), ...Array.from({ length: count }, (_, k) => corner(k))];
}

function outwards(from: Vertex, to: Vertex, share: number, stretch: number): Vertex {
  const { x, y } = pointOfSegment(from, to, share);
  if (isPoint(from, to)) return { x, y, bulge: 0 };
  const { cx, cy } = arcOf(from, to);
  return { x: cx + (x - cx) * stretch, y: cy + (y - cy) * stretch, bulge: 0 };
}

const pairAt = (own: TaperPair, next: TaperPair, share: number): TaperPair => ({
  lower: { ...pointOfSegment(own.lower, next.lower, share), bulge: 0 },
  upper: { ...pointOfSegment(own.upper, next.upper, share), bulge: 0 },
});

const radiusOf = (from: Vertex, to: Vertex): number =>
  from.bulge === 0 || isPoint(from, to) ? 0 : arcOf(from, to).radius;

const isPoint = (a: Point, b: Point): boolean => a.x === b.x && a.y === b.y;
