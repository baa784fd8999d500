import type { Unused } from './drawing';

/** Counts what is left out by layer, kind and reason (what is taken back is counted off); lives for one reading. */
export class UnusedCount {
  private readonly counts = new Map<string, Unused>();

  add(layer: string, kind: string, reason: string, count = 1): void {
    const key = JSON.stringify([layer, kind, reason]);
    const before = this.counts.get(key)?.count ?? 0;
    this.counts.set(key, { layer, kind, reason, count: before + count });
  }

  addAll(others: readonly Unused[]): void {
    for (const { layer, kind, reason, count } of others) this.add(layer, kind, reason, count);
  }

  /** By layer, then kind, then reason. */
  list(): readonly Unused[] {
    const counted = [...this.counts.values()].filter(({ count }) => count > 0);
    return counted.sort(
      (a, b) => order(a.layer, b.layer) || order(a.kind, b.kind) || order(a.reason, b.reason),
    );
  }
}

/** By code unit: the same everywhere, whatever the machine's language. */
const order = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);
