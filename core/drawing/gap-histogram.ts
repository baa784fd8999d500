import type { Point } from '../geometry/contour';
import { canonicalStrands, distinctStrands } from './canonical-strands';
import { nearestEnds, type EndGap } from './nearest-ends';
import type { Strand } from './strand';
import * as portable from '../geometry/portable-math';

export interface GapHistogram {
  /** Ends that meet another one on the very point. */
  readonly exact: number;
  /** Ends by the distance to the nearest other end, mm. */
  readonly bins: readonly GapBin[];
  /** Ends with no other end within the last bin. */
  readonly beyond: number;
  /**
   * A gap tolerance that separates the small gaps from the large ones: in the middle (by ratio) of the widest stretch
   * without any gap; null where there are no gaps or no such stretch.
   */
  readonly suggested: number | null;
}

/** Gaps from a lower bound up to below an upper one. */
export interface GapBin {
  readonly from: number;
  readonly to: number;
  readonly count: number;
  /** Where the first of them are. */
  readonly places: readonly Point[];
}

/**
 * How far the open ends of a drawing are from each other, in steps of 1, 2, 5 from a millionth of a mm to 5 mm: what a
 * person chooses the gap tolerance by.
 */
export function gapHistogram(strands: readonly Strand[]): GapHistogram {
  const loose = strands.filter(({ closed, chain }) => !closed && chain.length > 1);
  const { kept } = distinctStrands(canonicalStrands(loose));
  const gaps = nearestEnds(kept.items, edges[edges.length - 1] as number);
  const counts = new Array<number>(edges.length - 1).fill(0);
  const places = counts.map((): Point[] => []);
  let exact = 0;
  let beyond = 0;
  for (const { at, gap } of gaps) {
    if (gap < (edges[0] as number)) exact++;
    else if (gap >= (edges[edges.length - 1] as number)) beyond++;
    else {
      const bin = edges.findIndex((edge) => gap < edge) - 1;
      counts[bin] = (counts[bin] as number) + 1;
      if (counts[bin] <= mostPlaces) places[bin]?.push(at);
    }
  }
  const bins = counts.map((count, i) => ({
    from: edges[i] as number,
    to: edges[i + 1] as number,
    count,
    places: places[i] ?? [],
  }));
  return { exact, bins, beyond, suggested: suggestedGap(gaps) };
}

/** More marks than this say no more. */
const mostPlaces = 100;

const edges: readonly number[] = [-6, -5, -4, -3, -2, -1, 0].flatMap((power) =>
  [1, 2, 5].map((step) => step * portable.powerOfTen(power)),
);

/** Between the two neighbours in size whose ratio is largest, if one is at least twice the other. */
function suggestedGap(gaps: readonly EndGap[]): number | null {
  const sorted = gaps
    .map(({ gap }) => gap)
    .filter((gap) => gap >= (edges[0] as number) && Number.isFinite(gap))
    .sort((a, b) => a - b);
  const [smallest] = sorted;
  if (smallest === undefined) return null;
  // Above the last gap there is room as well: up to where ends no longer are neighbours.
  const ends = [...sorted, edges[edges.length - 1] as number];
  let best = { ratio: 2, at: null as number | null };
  for (let i = 0; i + 1 < ends.length; i++) {
    const [low, high] = [ends[i] as number, ends[i + 1] as number];
    if (high / low >= best.ratio) best = { ratio: high / low, at: Math.sqrt(low * high) };
  }
  return best.at;
}
