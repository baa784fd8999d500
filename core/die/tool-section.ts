import type { Region } from '../geometry/contour';
import { levelIntervals, withoutIntervals, type Interval } from '../geometry/level-crossings';
import { movedContour } from '../geometry/moved-contour';
import type { PlateName } from '../part-name';
import type { ToolSheet } from './die-set';
import type { Arrangement } from './tool';
import type { ToolPart } from './tool-parts';

/** Where a tool is cut open: along a level line at a height, or along an upright one. mm. */
export interface SectionLine {
  readonly runs: 'level' | 'upright';
  readonly at: number;
}

/** A piece of steel where the line crosses a tool. */
export interface SectionPiece extends Interval {
  readonly steel: 'die' | 'punch' | PlateName;
}

/** A tool cut along a line: what lies under the stock and what comes down on it. */
export interface ToolSection {
  readonly upper: readonly SectionPiece[];
  readonly lower: readonly SectionPiece[];
  /** Whether the die is the upper half, as in a compound tool. */
  readonly isDieUp: boolean;
  readonly whole: Interval;
}

/**
 * The section of a tool. In a compound tool the blanking punch with its piercing dies stands below, its plates around
 * it, and the blanking die comes down with the piercing punches in it; else the die lies below and the plates above.
 * Null where the line misses the block.
 */
export function toolSection(
  { parts, block }: ToolSheet,
  arrangement: Arrangement,
  line: SectionLine,
): ToolSection | null {
  const { outline } = block;
  if (!outline) return null;
  const { minX, minY, maxX, maxY } = outline;
  const isLevel = line.runs === 'level';
  if (line.at < (isLevel ? minY : minX) || line.at > (isLevel ? maxY : maxX)) return null;
  const whole = isLevel ? { from: minX, to: maxX } : { from: minY, to: maxY };
  const inside = (region: Region) => crossed(region, line);
  const around = (steel: SectionPiece['steel'], region: Region) =>
    withoutIntervals(whole, inside(region)).map(asSteel(steel));
  const of = (id: ToolPart['id']) => parts.filter((part) => part.id === id);
  const bodies = (id: ToolPart['id']) => of(id).flatMap(({ region }) => inside(region).map(asSteel('punch')));
  const die = around('die', block.openings);
  const blanking = bodies('punch');
  const piercing = bodies('piercing-punch');
  const isDieUp = arrangement === 'compound' && of('punch').length > 0 && of('piercing-punch').length > 0;
  // The piercing punches of a compound tool stand inside the die: their plates are not these.
  const own = isDieUp ? new Set(of('punch').flatMap(({ memberIds }) => memberIds.map(stemOf))) : null;
  const plates = (['stripper', 'retainer'] as const).flatMap((plate) =>
    of(plate).flatMap(({ region, memberIds }) => {
      const kept = region.filter((_, k) => !own || own.has(stemOf(memberIds[k] ?? '')));
      return kept.length > 0 ? around(plate, kept) : [];
    }),
  );
  return isDieUp
    ? { whole, isDieUp, lower: [...blanking, ...plates], upper: [...die, ...piercing] }
    : { whole, isDieUp, lower: die, upper: [...blanking, ...piercing, ...plates] };
}

/** Use and contour of a member: the first two words of its name (member-id.ts). */
const stemOf = (memberId: string): string => memberId.split('-').slice(0, 2).join('-');

/** A quarter turn brings an upright line level: x becomes the way along it. */
const crossed = (region: Region, { runs, at }: SectionLine): readonly Interval[] =>
  runs === 'level'
    ? levelIntervals(region, at)
    : levelIntervals(
        region.map((contour) => movedContour(contour, { turn: -Math.PI / 2, x: 0, y: 0 })),
        -at,
      );

const asSteel =
  (steel: SectionPiece['steel']) =>
  ({ from, to }: Interval): SectionPiece => ({ steel, from, to });
