import type { Chain, Vertex } from '../geometry/contour';
import { distanceOn, pointOn } from '../geometry/distance-profile';
import { num, type SegmentTable } from '../geometry/segment-table';
import { bandOf, type Band } from './band';
import { clearancePlace, stationOf, type ClearancePlace, type MapPiece } from './clearance-place';
import * as portable from '../geometry/portable-math';

/** A stretch of the punch whose clearance lies in one band. */
export interface MapStretch {
  readonly band: Band;
  readonly from: number;
  readonly to: number;
  readonly chain: Chain;
  /** The place in it that is farthest from the wanted clearance. */
  readonly worst: ClearancePlace;
}

/**
 * The stretches of the punch by band, in order round it. A piece of the map only rises or falls, so it is cut where it
 * passes a band's limit, found by halving to the last digit.
 */
export function clearanceBands(
  table: SegmentTable,
  pieces: readonly MapPiece[],
  wanted: number,
  tolerance: number,
): readonly MapStretch[] {
  const limits = [0, wanted - tolerance, wanted + tolerance];
  const parts = pieces.flatMap((piece) =>
    cutAt(table, piece, limits).map(({ from, to }): Part => {
      const middle = distanceOn(table, piece, (from + to) / 2);
      return { piece, from, to, band: bandOf(middle, wanted, tolerance) };
    }),
  );
  const runs: Part[][] = [];
  for (const part of parts) {
    const run = runs.at(-1);
    const last = run?.at(-1);
    const goesOn = last && last.band === part.band && followsOn(table, last.piece, part.piece);
    if (goesOn) run?.push(part);
    else runs.push([part]);
  }
  return runs.map((run) => stretchOf(table, run, wanted));
}

interface Part {
  readonly piece: MapPiece;
  readonly band: Band;
  readonly from: number;
  readonly to: number;
}

function cutAt(
  table: SegmentTable,
  piece: MapPiece,
  limits: readonly number[],
): readonly { readonly from: number; readonly to: number }[] {
  const { from, to, atFrom, atTo } = piece;
  const cuts = limits
    .filter((limit) => (atFrom - limit) * (atTo - limit) < 0)
    .map((limit) => passing(table, piece, limit))
    .sort((a, b) => a - b);
  const ends = [from, ...cuts, to];
  return ends.slice(0, -1).map((start, k) => ({ from: start, to: ends[k + 1] as number }));
}

/** The fraction at which a monotone piece passes a value. */
function passing(table: SegmentTable, piece: MapPiece, value: number): number {
  const rising = piece.atTo > piece.atFrom;
  let { from: low, to: high } = piece;
  for (let k = 0; k < doubleDigits; k++) {
    const middle = (low + high) / 2;
    if (distanceOn(table, piece, middle) < value === rising) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

const doubleDigits = 54;

const followsOn = (table: SegmentTable, before: MapPiece, after: MapPiece): boolean =>
  before === after ||
  (before.segment === after.segment
    ? before.to === after.from
    : before.to === 1 && after.from === 0 && table.next[before.segment] === after.segment);

function stretchOf(table: SegmentTable, run: readonly Part[], wanted: number): MapStretch {
  const [first] = run as readonly [Part];
  const last = run.at(-1) as Part;
  const worst = run
    .flatMap(({ piece, from, to }) => [clearancePlace(table, piece, from), clearancePlace(table, piece, to)])
    .reduce((a, b) => (Math.abs(b.clearance - wanted) > Math.abs(a.clearance - wanted) ? b : a));
  return {
    band: first.band,
    from: stationOf(first.piece, first.from),
    to: stationOf(last.piece, last.to),
    chain: [
      ...run.map(({ piece, from, to }) => startOf(table, piece, from, to)),
      { ...pointOn(table, last.piece.segment, last.to), bulge: 0 },
    ],
    worst,
  };
}

function startOf(table: SegmentTable, { segment }: MapPiece, from: number, to: number): Vertex {
  const bulge = num(table.bulge, segment);
  return {
    ...pointOn(table, segment, from),
    bulge: bulge === 0 ? 0 : portable.tan(portable.atan(bulge) * (to - from)),
  };
}
