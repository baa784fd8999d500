import type { Cure, Finding, FindingCode, FindingNumber, FindingWeight, Place } from './finding';

export interface FindingParts {
  readonly code: FindingCode;
  readonly weight: FindingWeight;
  readonly title: string;
  readonly message: string;
  readonly place?: Place;
  readonly contourId?: string;
  readonly memberId?: string;
  readonly numbers?: readonly FindingNumber[];
  readonly cures?: readonly Cure[];
}

/**
 * A finding with its key. The key names code, member or contour, place (to a hundredth of a millimetre) and numbers (to
 * a tenth of a micrometre or the like): what was settled stays settled while these stay, and is open again when one
 * changes. A finding without a place is told apart by its words.
 */
export function findingOf(parts: FindingParts): Finding {
  const { place, memberId, contourId, numbers = [], cures = [] } = parts;
  const at = place ? `${fixed(place.x, 2)},${fixed(place.y, 2)}` : parts.message;
  return {
    key: [parts.code, memberId ?? contourId ?? '', at, ...numbers.map(({ value }) => fixed(value, 4))].join(
      '|',
    ),
    code: parts.code,
    weight: parts.weight,
    title: parts.title,
    message: parts.message,
    place: place ?? null,
    contourId: contourId ?? null,
    memberId: memberId ?? null,
    numbers,
    cures,
  };
}

/** Without the sign that rounding leaves on a zero. */
const fixed = (value: number, digits: number): string => value.toFixed(digits).replace(/^-(0\.?0*)$/, '$1');
