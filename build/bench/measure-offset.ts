import type { Region } from '../../core/geometry/contour';
import { contourArea } from '../../core/geometry/contour-measures';
import { offsetRegion, prepareRegion } from '../../core/geometry/offset-region';
import { outlineError } from './outline-error';
import { peerOf } from './peers/all-peers';
import type { Workload } from './workloads';

/** The offset that everything is measured at, mm: half a 0.25 mm wire and its gap, about. */
export const offset = 0.147;

export interface OffsetMeasure {
  readonly side: 'inward' | 'outward';
  readonly ms: number;
  /** The time of our own offset, taken in turns with the library's: a slow moment of the machine falls on both. */
  readonly ownMs: number;
  readonly segments: number;
  readonly loops: number;
  readonly area: number;
  readonly error: number;
}

/** One library on one workload, inward then outward; each is reported as soon as it is known. */
export async function measureOffset(
  peerName: string,
  workload: Workload,
  chord: number,
  report: (measure: OffsetMeasure) => void,
): Promise<void> {
  const outline = workload.outline();
  const run = await peerOf(peerName).prepare(outline, chord);
  const errorOf = outlineError(outline);
  for (const side of ['inward', 'outward'] as const) {
    const distance = side === 'inward' ? -offset : offset;
    let toResult: () => Region = () => [];
    const [ms = NaN, ownMs = NaN] = medianTimes([
      () => {
        toResult = run(distance);
      },
      () => offsetRegion([outline], distance),
    ]);
    const result = toResult();
    report({
      side,
      ms,
      ownMs,
      segments: result.reduce((sum, loop) => sum + loop.length, 0),
      loops: result.length,
      area: Math.abs(result.reduce((sum, loop) => sum + contourArea(loop), 0)),
      error: errorOf(result, distance),
    });
  }
}

export interface ManyMeasure {
  readonly one: number;
  /** Median time of preparing once and offsetting so often, ms. */
  readonly many: readonly { readonly count: number; readonly ms: number }[];
}

/** One offset of a contour, and several that share its preparation. */
export function measureMany(workload: Workload): ManyMeasure {
  const region = [workload.outline()];
  const one = () => offsetRegion(region, offset);
  const many = (count: number) => () => {
    const prepared = prepareRegion(region, offset);
    for (let k = 0; k < count; k++) offsetRegion(prepared, offset * 0.97 ** k);
  };
  const counts = [2, 3, 5];
  const times = medianTimes([one, ...counts.map(many)]);
  return {
    one: times[0] ?? NaN,
    many: counts.map((count, k) => ({ count, ms: times[k + 1] ?? NaN })),
  };
}

/** The most memory this process has ever held, MB, after an offset either way: heap, arrays and Node itself. */
export function measureMemory(workload: Workload): number {
  const region = [workload.outline()];
  offsetRegion(region, -offset);
  offsetRegion(region, offset);
  return process.resourceUsage().maxRSS / 1024;
}

/**
 * Median times of several pieces of work in turns, ms: all warmed up, then as many rounds as fit into the time, quick
 * ones several times a round. What a round leaves behind is cleared away before the next piece of work is timed.
 */
function medianTimes(works: readonly (() => unknown)[]): number[] {
  const once = works.map(timeOf);
  const repeats = once.map((ms) =>
    ms > slow ? 0 : Math.max(1, Math.min(mostRepeats, Math.ceil(quick / ms))),
  );
  works.forEach((work, i) => {
    if (repeats[i] === 0) return;
    for (const start = performance.now(); performance.now() - start < warmUp;) work();
  });
  const times = once.map((ms, i) => (repeats[i] === 0 ? [ms] : []));
  const start = performance.now();
  for (let round = 0; round < fewest || performance.now() - start < works.length * measuring; round++) {
    works.forEach((work, i) => {
      for (let k = 0; k < (repeats[i] ?? 0); k++) {
        collectGarbage();
        times[i]?.push(timeOf(work));
      }
    });
  }
  return times.map(median);
}

/** ms: work that takes longer is timed once, and work that takes less several times in a round. */
const slow = 4000;
const quick = 20;
const mostRepeats = 5;
const warmUp = 500;
const measuring = 700;
const fewest = 5;

function collectGarbage(): void {
  if (!globalThis.gc) throw new Error('Run with --expose-gc');
  globalThis.gc({ type: 'minor' });
}

/** Processor time of a piece of work, ms: on a machine that does other things too, the clock would count those. */
function timeOf(work: () => unknown): number {
  const start = process.cpuUsage();
  work();
  const { user, system } = process.cpuUsage(start);
  return (user + system) / 1000;
}

function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[sorted.length >> 1] ?? NaN;
}
