import { levelIntervals, withoutIntervals, type Interval } from '../geometry/level-crossings';
import type { ToolSheet } from './die-set';
import type { Arrangement } from './tool';

/** A piece of steel where a level line crosses a tool. */
export interface SectionPiece extends Interval {
  readonly steel: 'die' | 'punch';
}

/** A tool cut along a level line: what lies under the stock and what comes down on it. */
export interface ToolSection {
  readonly upper: readonly SectionPiece[];
  readonly lower: readonly SectionPiece[];
  /** Openings of the die, in which the clearance is measured. */
  readonly openings: readonly Interval[];
  readonly whole: Interval;
}

/**
 * The section of a tool at a height of the drawing. In a compound tool the blanking punch with its piercing dies stands
 * below and the blanking die comes down with the piercing punches in it; else the die lies below. Null where the line
 * misses the block.
 */
export function toolSection(
  { parts, block }: ToolSheet,
  arrangement: Arrangement,
  y: number,
): ToolSection | null {
  const { outline } = block;
  if (!outline || y < outline.minY || y > outline.maxY) return null;
  const whole = { from: outline.minX, to: outline.maxX };
  const openings = levelIntervals(block.openings, y);
  const die = withoutIntervals(whole, openings).map(asSteel('die'));
  const blanking = parts.filter(({ id }) => id === 'punch');
  const piercing = parts
    .filter(({ id }) => id === 'piercing-punch')
    .flatMap(({ region }) => levelIntervals(region, y).map(asSteel('punch')));
  const punches = blanking.flatMap(({ region }) => levelIntervals(region, y).map(asSteel('punch')));
  const isCompound = arrangement === 'compound' && blanking.length > 0 && piercing.length > 0;
  return isCompound
    ? { whole, openings, lower: punches, upper: [...die, ...piercing] }
    : { whole, openings, lower: die, upper: [...punches, ...piercing] };
}

const asSteel =
  (steel: SectionPiece['steel']) =>
  ({ from, to }: Interval): SectionPiece => ({ steel, from, to });
