/**
 * Points in square cells, for finding those within one cell's width of a place: quicker than a tree where all that is
 * asked for is near. Built for one use; cells are found by hash, so that a far-flung drawing costs no more.
 */
export class PointGrid {
  private readonly cell: number;
  private readonly heads: Int32Array;
  private readonly next: Int32Array;
  private readonly x: Float64Array;
  private readonly y: Float64Array;

  constructor(x: Float64Array, y: Float64Array, cell: number) {
    this.x = x;
    this.y = y;
    this.cell = cell;
    let size = 16;
    while (size < x.length) size *= 2;
    this.heads = new Int32Array(size).fill(-1);
    this.next = new Int32Array(x.length).fill(-1);
  }

  add(i: number): void {
    const slot = this.slot(this.column(this.x[i] as number), this.column(this.y[i] as number));
    this.next[i] = this.heads[slot] as number;
    this.heads[slot] = i;
  }

  /** Visits the added points within one cell of a place, and some farther ones, until the visitor returns true. */
  near(x: number, y: number, visit: (i: number) => boolean): void {
    const [column, row] = [this.column(x), this.column(y)];
    for (let dx = -1; dx <= 1; dx++) {
      for (let dy = -1; dy <= 1; dy++) {
        const [c, r] = [column + dx, row + dy];
        for (let i = this.heads[this.slot(c, r)] as number; i >= 0; i = this.next[i] as number) {
          // Other cells may share the slot; each point is met in its own cell only.
          if (this.column(this.x[i] as number) !== c || this.column(this.y[i] as number) !== r) continue;
          if (visit(i)) return;
        }
      }
    }
  }

  private column(value: number): number {
    return Math.floor(value / this.cell);
  }

  private slot(column: number, row: number): number {
    const mixed = Math.imul(column | 0, 73_856_093) ^ Math.imul(row | 0, 19_349_663);
    return (mixed ^ (mixed >>> 15)) & (this.heads.length - 1);
  }
}
