import type { Box } from '../geometry/contour';
import { drawingUnits, type DrawingUnit } from '../units';
import type { RawDrawing } from './raw-drawing';

/** A unit that the drawing may be in, and how large the part then is, mm. */
export interface UnitCandidate {
  readonly unit: DrawingUnit;
  readonly width: number;
  readonly height: number;
  /** Whether the file states this unit. */
  readonly isStated: boolean;
  /** Whether a part of that size can be cut on a wire machine: its longer side from 0.5 mm to 1 m (common practice). */
  readonly isUsual: boolean;
}

/**
 * What the drawing's unit may be, for a person to pick by the size of the part: the stated unit first, then mm and inch,
 * then cm, m and mil where they make a usual size. Never an answer by itself: headers that say inch on parts drawn in mm
 * are common. `part` is the box around the part in drawing units, by default around all that is shown.
 */
export function unitCandidates(raw: RawDrawing, part: Box = raw.box): readonly UnitCandidate[] {
  const { minX, minY, maxX, maxY } = part;
  const [width, height] = [Math.max(0, maxX - minX), Math.max(0, maxY - minY)];
  const candidate = (unit: DrawingUnit): UnitCandidate => {
    const { mm } = drawingUnits[unit];
    const longer = Math.max(width, height) * mm;
    return {
      unit,
      width: width * mm,
      height: height * mm,
      isStated: unit === raw.statedUnit,
      isUsual: longer >= smallest && longer <= largest,
    };
  };
  const always: readonly DrawingUnit[] = [...(raw.statedUnit ? [raw.statedUnit] : []), 'mm', 'inch'];
  const sometimes = (['cm', 'm', 'mil'] as const).filter((unit) => candidate(unit).isUsual);
  return [...new Set([...always, ...sometimes])].map(candidate);
}

const smallest = 0.5;
const largest = 1000;
