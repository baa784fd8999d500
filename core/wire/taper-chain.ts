import type { Chain, Contour, Point, Vertex } from '../geometry/contour';
import { arcOf, reversedChain, segmentLength } from '../geometry/contour-measures';
import type { TaperLoop, TaperPair } from './taper-loop';
import * as portable from '../geometry/portable-math';

/** Pairs of a run: as a chain, the last pair's vertices end it. */
export type TaperChain = readonly TaperPair[];

/**
 * The pairs of a loop from a place on its lower contour onwards for a length of it, mm; more than once round where the
 * length says so. Stretches without length below are taken where the run passes them.
 */
export function pairsAlong(
  loop: TaperLoop,
  from: { readonly segment: number; readonly along: number },
  length: number,
): TaperChain {
  const count = loop.length;
  const pair = (i: number): TaperPair => loop[i % count] as TaperPair;
  const chain: TaperPair[] = [];
  let left = length;
  let share = from.along;
  for (let i = from.segment; ; i++) {
    const [own, next] = [pair(i), pair(i + 1)];
    const whole = segmentLength(own.lower, next.lower);
    const wanted = whole === 0 ? 1 : share + left / whole;
    const end = Math.min(1, wanted);
    chain.push(startOfPart(own, next, share, end));
    left -= whole * (end - share);
    if (wanted <= 1 && whole > 0) {
      chain.push(endOfPart(own, next, end));
      return chain;
    }
    share = 0;
  }
}

/** The same run the other way. */
export function reversedPairs(chain: TaperChain): TaperChain {
  const lower = reversedChain(chain.map((pair) => pair.lower));
  const upper = reversedChain(chain.map((pair) => pair.upper));
  return lower.map((vertex, i) => ({ lower: vertex, upper: upper[i] as Vertex }));
}

/**
 * The wire's path in the plane at a share of the height (0 the lower one, 1 the upper one). Stretches that keep their
 * turn are lines and arcs there as well; where the turns differ the arc is the one between them.
 */
export function contourAt(loop: TaperLoop, share: number): Contour {
  return loop.flatMap(({ lower, upper }, i) => {
    const next = loop[(i + 1) % loop.length] as TaperPair;
    const [from, to] = [between(lower, upper, share), between(next.lower, next.upper, share)];
    if (from.x === to.x && from.y === to.y) return [];
    const isCone = lower.x === next.lower.x && lower.y === next.lower.y;
    const bulge = isCone ? upper.bulge : lower.bulge + (upper.bulge - lower.bulge) * share;
    return [{ ...from, bulge }];
  });
}

export const between = (a: Point, b: Point, share: number): Point => ({
  x: a.x + (b.x - a.x) * share,
  y: a.y + (b.y - a.y) * share,
});

/** The point at a share of a segment, for arcs of its turn. */
export function pointOfSegment(from: Vertex, to: Point, share: number): Point {
  if (from.bulge === 0 || (from.x === to.x && from.y === to.y)) return between(from, to, share);
  const { cx, cy } = arcOf(from, { ...to, bulge: 0 });
  const turn = 4 * portable.atan(from.bulge) * share;
  const [x, y] = [from.x - cx, from.y - cy];
  return {
    x: cx + x * portable.cos(turn) - y * portable.sin(turn),
    y: cy + x * portable.sin(turn) + y * portable.cos(turn),
  };
}

function startOfPart(own: TaperPair, next: TaperPair, start: number, end: number): TaperPair {
  const part = (from: Vertex, to: Vertex): Vertex => ({
    ...pointOfSegment(from, to, start),
    bulge: from.bulge === 0 ? 0 : portable.tan(portable.atan(from.bulge) * (end - start)),
  });
  return { lower: part(own.lower, next.lower), upper: part(own.upper, next.upper) };
}

function endOfPart(own: TaperPair, next: TaperPair, end: number): TaperPair {
  const part = (from: Vertex, to: Vertex): Vertex => ({ ...pointOfSegment(from, to, end), bulge: 0 });
  return { lower: part(own.lower, next.lower), upper: part(own.upper, next.upper) };
}

/** Lower and upper path of a run as chains of their own. */
export const lowerOf = (chain: TaperChain): Chain => chain.map(({ lower }) => lower);
export const upperOf = (chain: TaperChain): Chain => chain.map(({ upper }) => upper);
