import type { Point } from '../geometry/contour';
import type { Repair, RepairKind, RepairSwitch } from './drawing';

/** Collects repairs and knows which kinds are wanted; lives for one outline. */
export class RepairLog {
  readonly repairs: Repair[] = [];
  private readonly off: ReadonlySet<RepairKind>;

  constructor(off: readonly RepairSwitch[]) {
    this.off = new Set<RepairKind>(off);
  }

  isOn(kind: RepairKind): boolean {
    return !this.off.has(kind);
  }

  add(kind: RepairKind, { x, y }: Point, size: number): void {
    this.repairs.push({ kind, place: { x, y }, size });
  }

  /** By kind, then by place. */
  list(): readonly Repair[] {
    return [...this.repairs].sort(
      (a, b) =>
        (a.kind < b.kind ? -1 : a.kind > b.kind ? 1 : 0) || a.place.x - b.place.x || a.place.y - b.place.y,
    );
  }
}
