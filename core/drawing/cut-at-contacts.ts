import Flatbush from 'flatbush';
import type { Chain, Point, Vertex } from '../geometry/contour';
import { chainLength } from '../geometry/contour-measures';
import { alongSegment, pointAlong } from '../geometry/along-segment';
import { emptyTable, addSegment, num, segmentBoxes, squaredDistance } from '../geometry/segment-table';
import { tolerance } from '../geometry/tolerance';
import { groupBy } from './group-by';
import { limits } from './limits';
import type { Strand } from './strand';
import * as portable from '../geometry/portable-math';

/** A place on a strand: on which of its segments, and how far along that. */
interface CutPlace {
  readonly strand: number;
  readonly segment: number;
  readonly fraction: number;
}

/**
 * Strands cut wherever the end of another (or their own other end) lies on the middle of them within `reach`. Only what
 * concerns the strands in `loose` is cut: what closes by itself is left alone. Null where nothing is to be cut, and where
 * so much lies within reach of each other that nobody could tell what belongs together.
 */
export function cutAtContacts(
  strands: readonly Strand[],
  loose: ReadonlySet<Strand>,
  reach: number,
): readonly Strand[] | null {
  const places = contactsOf(strands, loose, Math.max(reach, tolerance.samePoint));
  if (places.length === 0) return null;
  const byStrand = groupBy(places, ({ strand }) => strand);
  return strands.flatMap((strand, i) => {
    const cuts = byStrand.get(i);
    return cuts ? piecesOf(strand, cuts, reach) : [strand];
  });
}

function contactsOf(strands: readonly Strand[], loose: ReadonlySet<Strand>, reach: number): CutPlace[] {
  const total = strands.reduce((sum, { chain }) => sum + chain.length - 1, 0);
  const table = emptyTable(total);
  const owner = new Int32Array(total);
  const first = new Int32Array(strands.length);
  strands.forEach(({ chain }, i) => {
    first[i] = table.count;
    for (let k = 0; k + 1 < chain.length; k++) {
      const [from, to] = [chain[k] as Vertex, chain[k + 1] as Vertex];
      owner[table.count] = i;
      addSegment(table, from.x, from.y, to.x, to.y, from.bulge);
    }
  });
  const boxes = segmentBoxes(table);
  const index = new Flatbush(total);
  for (let i = 0; i < total; i++)
    index.add(num(boxes, 4 * i), num(boxes, 4 * i + 1), num(boxes, 4 * i + 2), num(boxes, 4 * i + 3));
  index.finish();
  const places: CutPlace[] = [];
  let looked = 0;
  for (const strand of strands) {
    if (looked > limits.contacts) return [];
    for (const end of [strand.chain[0], strand.chain[strand.chain.length - 1]] as readonly Vertex[]) {
      index.search(end.x - reach, end.y - reach, end.x + reach, end.y + reach, (segment) => {
        looked++;
        const target = strands[owner[segment] as number] as Strand;
        if (!loose.has(strand) && !loose.has(target)) return false;
        if (squaredDistance(table, segment, end.x, end.y) > reach * reach) return false;
        if (isNearEnd(target.chain, end, reach)) return false;
        const fraction = alongSegment(table, segment, end.x, end.y);
        if (fraction >= 0 && fraction <= 1)
          places.push({
            strand: owner[segment] as number,
            segment: segment - (first[owner[segment] as number] as number),
            fraction,
          });
        return false;
      });
    }
  }
  return places;
}

/** Where two ends are near each other they are joined as ends. */
function isNearEnd(chain: Chain, { x, y }: Point, reach: number): boolean {
  const [a, b] = [chain[0] as Vertex, chain[chain.length - 1] as Vertex];
  return Math.hypot(a.x - x, a.y - y) <= reach || Math.hypot(b.x - x, b.y - y) <= reach;
}

/** A strand in pieces; cuts nearer to each other than `reach` are one. */
function piecesOf(strand: Strand, cuts: readonly CutPlace[], reach: number): readonly Strand[] {
  const sorted = [...cuts].sort((a, b) => a.segment - b.segment || a.fraction - b.fraction);
  const pieces: Vertex[][] = [];
  let piece: Vertex[] = [];
  let last: Point | null = null;
  let next = 0;
  strand.chain.forEach((vertex, k) => {
    const to = strand.chain[k + 1];
    let from = vertex;
    let done = 0;
    for (let cut = sorted[next]; to && cut?.segment === k; cut = sorted[++next]) {
      const at = pointOn(vertex, to, cut.fraction);
      const isNew = !last || Math.hypot(at.x - last.x, at.y - last.y) > reach;
      if (!isNew || cut.fraction <= done || cut.fraction >= 1) continue;
      piece.push({ ...from, bulge: partBulge(vertex.bulge, cut.fraction - done) }, { ...at, bulge: 0 });
      pieces.push(piece);
      piece = [];
      from = { ...at, bulge: vertex.bulge };
      done = cut.fraction;
      last = at;
    }
    piece.push({ ...from, bulge: to ? partBulge(vertex.bulge, 1 - done) : 0 });
  });
  pieces.push(piece);
  if (pieces.length === 1) return [strand];
  return pieces
    .filter((chain) => chain.length > 1)
    .map((chain) => ({
      ...strand,
      chain,
      length: chainLength(chain),
      zeroLength: [],
      cutFrom: strand.cutFrom ?? strand,
    }));
}

const partBulge = (bulge: number, share: number): number =>
  share === 1 || bulge === 0 ? bulge : portable.tan(portable.atan(bulge) * share);

function pointOn(from: Vertex, to: Vertex, fraction: number): Point {
  const table = emptyTable(1);
  addSegment(table, from.x, from.y, to.x, to.y, from.bulge);
  const at = new Float64Array(2);
  pointAlong(table, 0, fraction, at);
  return { x: num(at, 0), y: num(at, 1) };
}
