import type { Contour } from '../../core/geometry/contour';
import { crystalOutline, filletedOutline } from './outlines';

/** The outlines that offsets are measured on, by kind and from small to large. */
export interface Workload {
  readonly name: string;
  readonly kind: 'lines' | 'lines and arcs';
  outline(): Contour;
}

const lines = (name: string, count: number): Workload => ({
  name,
  kind: 'lines',
  outline: () => crystalOutline(count),
});

const linesAndArcs = (name: string, count: number): Workload => ({
  name,
  kind: 'lines and arcs',
  outline: () => filletedOutline(count),
});

export const workloads: readonly Workload[] = [
  lines('lines-1.2k', 1200),
  lines('lines-12k', 12_000),
  lines('lines-120k', 120_000),
  linesAndArcs('arcs-1k', 1000),
  linesAndArcs('arcs-10k', 10_000),
  linesAndArcs('arcs-100k', 100_000),
];

export function workloadOf(name: string): Workload {
  const found = workloads.find((workload) => workload.name === name);
  if (!found)
    throw new Error(`No workload ${name}: ${workloads.map((workload) => workload.name).join(', ')}`);
  return found;
}
