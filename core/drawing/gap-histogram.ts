import { drawingUnits, type DrawingUnit } from '../units';
import { canonicalStrands, distinctStrands } from './canonical-strands';
import { chooseNothing, choosePieces } from './choose-pieces';
import type { DrawingChoice } from './drawing';
import { limits } from './limits';
import { nearestEnds } from './nearest-ends';
import type { RawDrawing } from './raw-drawing';
import { strandOfPiece } from './strand';
import { UnusedCount } from './unused-count';

export interface GapHistogram {
  /** Ends that meet another one on the very point. */
  readonly exact: number;
  /** Ends by the distance to the nearest other end, mm; a bin holds from its lower bound up to below its upper one. */
  readonly bins: readonly { readonly from: number; readonly to: number; readonly count: number }[];
  /** Ends with no other end within the last bin. */
  readonly beyond: number;
  /**
   * A gap tolerance that separates the small gaps from the large ones: in the middle (by ratio) of the widest stretch
   * without any gap; null where there are no gaps or no such stretch.
   */
  readonly suggested: number | null;
}

/**
 * How far the open ends of a drawing are from each other, in steps of 1, 2, 5 from a millionth of a mm to 5 mm: what a
 * person chooses the gap tolerance by.
 */
export function gapHistogram(
  raw: RawDrawing,
  unit: DrawingUnit,
  choice: DrawingChoice = chooseNothing,
): GapHistogram {
  const factor = drawingUnits[unit].mm;
  const budget = { arcs: limits.fittedArcs };
  const strands = choosePieces(raw, choice, new UnusedCount())
    .filter(({ closed }) => !closed)
    .map((piece) => strandOfPiece(piece, factor, budget))
    .flatMap((strand) => (strand && strand.chain.length > 1 ? [strand] : []));
  const { kept } = distinctStrands(canonicalStrands(strands));
  const gaps = nearestEnds(kept.items, edges[edges.length - 1] as number);
  const counts = new Array<number>(edges.length - 1).fill(0);
  let exact = 0;
  let beyond = 0;
  for (const gap of gaps) {
    if (gap < (edges[0] as number)) exact++;
    else if (gap >= (edges[edges.length - 1] as number)) beyond++;
    else {
      const bin = edges.findIndex((edge) => gap < edge) - 1;
      counts[bin] = (counts[bin] as number) + 1;
    }
  }
  const bins = counts.map((count, i) => ({ from: edges[i] as number, to: edges[i + 1] as number, count }));
  return { exact, bins, beyond, suggested: suggestedGap(gaps.filter((gap) => gap >= (edges[0] as number))) };
}

const edges: readonly number[] = [-6, -5, -4, -3, -2, -1, 0].flatMap((power) =>
  [1, 2, 5].map((step) => step * 10 ** power),
);

/** Between the two neighbours in size whose ratio is largest, if one is at least twice the other. */
function suggestedGap(gaps: readonly number[]): number | null {
  const sorted = gaps.filter(Number.isFinite).sort((a, b) => a - b);
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
