/** Numbers that look random and are the same for the same seed (a linear congruence, Park and Miller). */
export class SeededRandom {
  private state: number;

  constructor(seed: number) {
    this.state = ((Math.abs(Math.floor(seed)) * 7919) % 2_147_483_646) + 1;
    for (let i = 0; i < 5; i++) this.next();
  }

  /** From 0 up to below 1. */
  next(): number {
    this.state = (this.state * 48_271) % 2_147_483_647;
    return this.state / 2_147_483_647;
  }

  /** A whole number from 0 up to below `limit`. */
  below(limit: number): number {
    return Math.floor(this.next() * limit);
  }

  pick<T>(all: readonly T[]): T {
    return all[this.below(all.length)] as T;
  }
}
