import { combineRegions } from '../geometry/combine-regions';
import type { Chain, Contour, Region, Vertex } from '../geometry/contour';
import { contourBox, reversedChain, segmentLength } from '../geometry/contour-measures';
import { chainBetween, type LoopPosition } from '../geometry/loop-position';
import { closeRegion, openRegion } from '../geometry/open-region';
import { indexOf, nearestSegment, type SegmentIndex } from '../geometry/segment-index';
import { segmentMiddle, turnBetween } from '../geometry/segment-turn';
import { alongSegment } from '../geometry/along-segment';
import { tableOfRegion } from '../geometry/segment-table';
import { tolerance } from '../geometry/tolerance';
import type { CornerPlace } from './corner-places';
import * as portable from '../geometry/portable-math';

/** A corner of a drawn contour and the radius it is to have, mm. */
export interface Rounding {
  readonly place: CornerPlace;
  readonly radius: number;
}

export interface RoundedOutline {
  readonly contour: Contour;
  /** Roundings that do not fit: the edges are too short for them, or a larger one beside it takes the room. */
  readonly refused: readonly Rounding[];
}

/** Radii for places that bend more tightly but are no corner, by kind; 0: they stay. mm. */
export type ElsewhereRadii = Readonly<Record<CornerPlace['kind'], number>>;

/**
 * A drawn contour with its corners rounded, each by its own radius (one up to the drawn radius leaves it). Exact: the arc is where a disc of the radius
 * touches both edges, whatever they are, so that it begins radius / tan(angle / 2) from a corner between lines. All
 * other segments stay as they are.
 *
 * Idea: what a disc rolling along the inside (convex corners) or outside (reflex ones) does not reach falls into pieces,
 * one a corner; the stretch of contour along a piece gives way to the disc's arc. A piece that turns back on itself
 * belongs to no corner but to a tongue or slot narrower than the disc: it is refused. O(n log n) for each radius.
 */
export function roundedOutline(
  drawn: Contour,
  corners: readonly Rounding[],
  elsewhere: ElsewhereRadii = { convex: 0, reflex: 0 },
): RoundedOutline {
  const wanted = corners.filter(({ place, radius }) => radius > place.drawnRadius + tolerance.samePoint);
  const turns = turnsOf(wanted, elsewhere);
  if (turns.length === 0) return { contour: drawn, refused: [] };
  const rounder = rounderOf(drawn);
  const fitting: Replacement[] = [];
  const refused = new Set(wanted);
  for (const turn of turns) {
    for (const piece of piecesOf(drawn, turn)) {
      const held = cornersOn(piece, corners);
      const own = held.filter((corner) => refused.has(corner) && isOf(turn, corner));
      if (held.length > 0 ? own.length === 0 : turn.radius !== elsewhere[turn.kind]) continue;
      const replacement = replacementFor(rounder, piece, turn.kind);
      if (!replacement || fitting.some((other) => overlap(other, replacement, rounder.length))) continue;
      fitting.push(replacement);
      for (const corner of own) refused.delete(corner);
    }
  }
  return { contour: spliced(rounder, fitting), refused: [...refused] };
}

interface Turn {
  readonly kind: CornerPlace['kind'];
  readonly radius: number;
}

/** Every kind and radius that is asked for, the largest radius first. */
function turnsOf(wanted: readonly Rounding[], elsewhere: ElsewhereRadii): readonly Turn[] {
  const turns = [
    ...wanted.map(({ place: { kind }, radius }) => ({ kind, radius })),
    ...(['convex', 'reflex'] as const).map((kind) => ({ kind, radius: elsewhere[kind] })),
  ].filter(({ radius }) => radius > 0);
  const distinct = new Map(turns.map((turn) => [`${turn.kind} ${turn.radius}`, turn]));
  return [...distinct.values()].sort((a, b) => b.radius - a.radius);
}

const isOf = (turn: Turn, { place, radius }: Rounding): boolean =>
  place.kind === turn.kind && radius === turn.radius;

function piecesOf(drawn: Contour, { kind, radius }: Turn): Region {
  return kind === 'convex'
    ? combineRegions([drawn], openRegion([drawn], radius), 'difference')
    : combineRegions(closeRegion([drawn], radius), [drawn], 'difference');
}

/** The corners whose place is on a piece's outline. */
function cornersOn(piece: Contour, corners: readonly Rounding[]): readonly Rounding[] {
  const near = tolerance.sameBoundary;
  const box = contourBox(piece);
  const index = indexOf(tableOfRegion([piece]));
  return corners.filter(
    ({ place: { at } }) =>
      at.x >= box.minX - near &&
      at.x <= box.maxX + near &&
      at.y >= box.minY - near &&
      at.y <= box.maxY + near &&
      nearestSegment(index, at.x, at.y, near).segment >= 0,
  );
}

interface Rounder {
  readonly drawn: Contour;
  readonly index: SegmentIndex;
  /** Length before each segment, and of the whole. mm. */
  readonly before: readonly number[];
  readonly length: number;
}

function rounderOf(drawn: Contour): Rounder {
  const before: number[] = [];
  let length = 0;
  drawn.forEach((from, i) => {
    before.push(length);
    length += segmentLength(from, drawn[(i + 1) % drawn.length] as Vertex);
  });
  return { drawn, index: indexOf(tableOfRegion([drawn])), before, length };
}

/** A stretch of the contour and what takes its place. */
interface Replacement {
  readonly from: LoopPosition & { readonly at: number };
  readonly to: LoopPosition & { readonly at: number };
  /** From `from` to `to`, the contour's way round. */
  readonly chain: Chain;
}

function replacementFor(rounder: Rounder, piece: Contour, kind: CornerPlace['kind']): Replacement | null {
  const { index } = rounder;
  const isOwn = piece.map((from, i) => {
    const middle = segmentMiddle(from, piece[(i + 1) % piece.length] as Vertex);
    return nearestSegment(index, middle.x, middle.y, tolerance.sameBoundary).segment >= 0;
  });
  const begins = isOwn.flatMap((own, i) => (own && !isOwn.at(i - 1) ? [i] : []));
  const [begin] = begins;
  if (begin === undefined || begins.length !== 1) return null;
  const turned: Vertex[] = [...piece.slice(begin), ...piece.slice(0, begin)];
  const count = isOwn.filter((own) => own).length;
  const own: Chain = turned.slice(0, count + 1);
  const arc: Chain = [...turned.slice(count), { ...(turned[0] as Vertex), bulge: 0 }];
  if (Math.abs(netTurn(own)) > greatestTurn) return null;
  // A piece inside the contour has its stretch of it the contour's way round, one outside the other way.
  const [first, last] = [positionOn(rounder, own[0]), positionOn(rounder, own.at(-1))];
  return kind === 'convex'
    ? { from: first, to: last, chain: reversedChain(arc) }
    : { from: last, to: first, chain: arc };
}

/** A rounded corner turns by less than half round; a tongue's end, or a slot's, does not. */
const greatestTurn = 0.95 * Math.PI;

function netTurn(chain: Chain): number {
  let turn = 0;
  for (let i = 0; i + 1 < chain.length; i++) {
    turn += 4 * portable.atan((chain[i] as Vertex).bulge);
    if (i > 0) turn += turnBetween(chain[i - 1] as Vertex, chain[i] as Vertex, chain[i + 1] as Vertex);
  }
  return turn;
}

function positionOn(rounder: Rounder, vertex: Vertex | undefined): Replacement['from'] {
  const { x, y } = vertex as Vertex;
  const { segment } = nearestSegment(rounder.index, x, y);
  const { drawn, before, index } = rounder;
  const along = Math.min(1, Math.max(0, alongSegment(index.table, segment, x, y)));
  const length = segmentLength(drawn[segment] as Vertex, drawn[(segment + 1) % drawn.length] as Vertex);
  return { segment, along, at: (before[segment] as number) + along * length };
}

/** Whether two stretches have more than a point in common. */
function overlap(a: Replacement, b: Replacement, whole: number): boolean {
  const ahead = (from: number, to: number): number => (to - from + whole) % whole;
  const slack = tolerance.zeroLength;
  const holds = (outer: Replacement, at: number): boolean => {
    const size = ahead(outer.from.at, outer.to.at);
    const place = ahead(outer.from.at, at);
    return place > slack && place < size - slack;
  };
  return (
    holds(a, b.from.at) ||
    holds(a, b.to.at) ||
    holds(b, a.from.at) ||
    holds(b, a.to.at) ||
    Math.abs(a.from.at - b.from.at) < slack
  );
}

function spliced({ drawn }: Rounder, replacements: readonly Replacement[]): Contour {
  if (replacements.length === 0) return drawn;
  const ordered = [...replacements].sort((a, b) => a.from.at - b.from.at);
  return ordered.flatMap(({ chain, to }, k) => {
    const next = ordered[(k + 1) % ordered.length] as Replacement;
    const stays = chainBetween(drawn, to, next.from);
    // Each chain's last vertex is the next one's first.
    return [...chain.slice(0, -1), ...(touches(to, next.from) ? [] : stays.slice(0, -1))];
  });
}

const touches = (a: Replacement['from'], b: Replacement['from']): boolean =>
  Math.abs(a.at - b.at) < tolerance.zeroLength;
