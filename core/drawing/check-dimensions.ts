import type { Finding } from '../finding';
import { findingOf } from '../finding-of';
import type { Point } from '../geometry/contour';
import { indexOf, isNearer, type SegmentIndex } from '../geometry/segment-index';
import { tableOfRegion } from '../geometry/segment-table';
import { tolerance } from '../geometry/tolerance';
import { sayLength } from '../say';
import type { Dimension, DrawingContour } from './drawing';
import { facing, growthBetween } from './growth-between';
import { readDimensionText } from './read-dimension-text';
import type { RawDimension } from './raw-drawing';

export interface CheckedDimensions {
  readonly dimensions: readonly Dimension[];
  readonly findings: readonly Finding[];
}

/**
 * The drawing's dimensions in mm beside the contours they belong to, and a finding for each that its geometry does not
 * bear out: the measured value that the file states, or the number written in place of it, is another than the distance
 * between its points.
 */
export function checkDimensions(
  raw: readonly RawDimension[],
  mmPerUnit: number,
  contours: readonly DrawingContour[],
): CheckedDimensions {
  if (raw.length === 0) return { dimensions: [], findings: [] };
  const indices = contours.map(({ id, contour }) => ({ id, index: indexOf(tableOfRegion([contour])) }));
  const findings: Finding[] = [];
  const dimensions = raw.map((source): Dimension => {
    const written = readDimensionText(source.text);
    const toMm = mmPerUnit / source.factor;
    // A diameter may be written on a radius and the other way round.
    const turnedOver =
      source.kind === 'radius' && written.sign === '⌀'
        ? 0.5
        : source.kind === 'diameter' && written.sign === 'R'
          ? 2
          : 1;
    const measured = source.measured * mmPerUnit;
    const nominal = written.number === null ? measured : written.number * toMm * turnedOver;
    const deviation = written.deviation ?? source.deviation;
    const stated = deviation && { plus: deviation.plus * toMm, minus: deviation.minus * toMm };
    const from = scaled(source.from, mmPerUnit);
    const to = scaled(source.to, mmPerUnit);
    const onContour = indices.find(
      ({ index }) => isOn(index, to) && (source.kind === 'radius' || isOn(index, from)),
    );
    const contourId = onContour?.id ?? null;
    const growth = onContour ? growthOf(source, onContour.index, from, to) : 0;
    const finding = disagreement(source, {
      measured,
      nominal,
      written: written.lastPlace * toMm * turnedOver,
      mmPerUnit,
      contourId,
    });
    if (finding) findings.push(finding);
    return {
      kind: source.kind,
      from,
      to,
      measured,
      nominal,
      text: source.text,
      tolerance: stated,
      growth,
      sizeShift: stated && growth !== 0 ? (stated.plus + stated.minus) / 2 / growth : 0,
      contourId,
    };
  });
  return { dimensions, findings };
}

/** By how much the dimension grows with its contour; 0 where it is set by something else. */
function growthOf({ kind, along }: RawDimension, index: SegmentIndex, from: Point, to: Point): number {
  const straight = { x: to.x - from.x, y: to.y - from.y };
  const turned =
    along && straight.x * along.x + straight.y * along.y < 0 ? { x: -along.x, y: -along.y } : along;
  const growth =
    kind === 'radius' ? facing(index, to, straight) : growthBetween(index, from, to, turned ?? straight);
  return Math.abs(growth) > leastGrowth ? growth : 0;
}

/** A dimension that grows by less than this share of the contour's growth is set by something else. */
const leastGrowth = 0.5;

const scaled = ({ x, y }: Point, factor: number): Point => ({ x: x * factor, y: y * factor });

const isOn = (index: SegmentIndex, { x, y }: Point): boolean => isNearer(index, x, y, tolerance.gap);

interface Numbers {
  readonly measured: number;
  readonly nominal: number;
  /** What one step of the last written digit is worth, mm. */
  readonly written: number;
  readonly mmPerUnit: number;
  readonly contourId: string | null;
}

function disagreement(source: RawDimension, numbers: Numbers): Finding | null {
  const { measured, nominal, written, mmPerUnit, contourId } = numbers;
  const at = scaled(source.at, mmPerUnit);
  const name = `The ${source.kind} dimension on layer ${source.layer} at x ${at.x.toFixed(3)}, y ${at.y.toFixed(3)} mm`;
  const find = (title: string, message: string, other: number): Finding =>
    findingOf({
      code: 'dimension-disagrees',
      weight: 'decide',
      title,
      message,
      place: { ...at, reach: Math.max(measured, other) / 2 + 1 },
      ...(contourId === null ? {} : { contourId }),
      numbers: [
        { label: 'Drawn', value: measured, kind: 'length' },
        { label: 'Stated', value: other, kind: 'length' },
      ],
      cures: [
        { kind: 'other', say: 'Ask the customer which of the two is meant, and have the drawing corrected.' },
      ],
    });
  // Half a step of the last digit is rounding; a hair more is not.
  if (Math.abs(nominal - measured) > written * 0.5001 + tolerance.samePoint) {
    return find(
      'Dimension not to scale',
      `${name} says "${source.text}", which is ${sayLength(nominal)}, but its points are ${sayLength(measured)} apart.`,
      nominal,
    );
  }
  if (source.stated === null) return null;
  // Some programs store the number as shown, some as measured.
  const stated = [source.stated * mmPerUnit, (source.stated * mmPerUnit) / source.factor];
  const nearest = stated.reduce((best, value) =>
    Math.abs(value - measured) < Math.abs(best - measured) ? value : best,
  );
  if (Math.abs(nearest - measured) <= tolerance.gap) return null;
  return find(
    'Dimension out of date',
    `${name} measured ${sayLength(nearest)} when it was made; its points are now ${sayLength(measured)} apart: the geometry was changed without it.`,
    nearest,
  );
}
