import type { Contour } from '../geometry/contour';
import { LoopRuler } from './loop-ruler';
import { onFirstRound, stretchesAlong, type Stretch } from './loop-stretches';
import type { WireMove } from './wire-path';

/**
 * Index of the move with which the moves have been all round the wanted loop: from then on the piece inside hangs by
 * nothing. Null where they never are.
 */
export function closingMove(moves: readonly WireMove[], wanted: Contour, off: number): number | null {
  const ruler = new LoopRuler(wanted);
  const cut = new CutLength(ruler.length, 2 * off);
  for (const stretch of stretchesAlong(moves, ruler, off)) {
    cut.add(onFirstRound(stretch, ruler.length));
    if (cut.isWhole()) return stretch.index;
  }
  return null;
}

/** What of a loop's length has been cut: stretches apart from one another, in order. */
class CutLength {
  private parts: { start: number; end: number }[] = [];
  private readonly length: number;
  private readonly slack: number;

  constructor(length: number, slack: number) {
    this.length = length;
    this.slack = slack;
  }

  add({ start, end }: Pick<Stretch, 'start' | 'end'>): void {
    if (end > this.length + this.slack) this.add({ start: 0, end: end - this.length });
    const joined = { start, end: Math.min(end, this.length) };
    this.parts = this.parts.filter((part) => {
      const isApart = part.end < joined.start - this.slack || part.start > joined.end + this.slack;
      if (isApart) return true;
      joined.start = Math.min(joined.start, part.start);
      joined.end = Math.max(joined.end, part.end);
      return false;
    });
    this.parts.push(joined);
  }

  isWhole(): boolean {
    const [only, ...others] = this.parts;
    return (
      only !== undefined &&
      others.length === 0 &&
      only.start <= this.slack &&
      only.end >= this.length - this.slack
    );
  }
}
