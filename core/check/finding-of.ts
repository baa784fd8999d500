import type { Cure, Finding, FindingCode, FindingNumber, FindingWeight, Place } from '../finding';

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
 * A finding with its key. The key names code, member, place (to a hundredth of a millimetre) and numbers (to a tenth of
 * a micrometre or the like): what was settled stays settled while these stay, and is open again when one changes.
 */
export function findingOf(parts: FindingParts): Finding {
  const { place, memberId, contourId, numbers = [], cures = [] } = parts;
  const at = place ? `${place.x.toFixed(2)},${place.y.toFixed(2)}` : '';
  const sizes = numbers.map(({ value }) => value.toFixed(4)).join(',');
  return {
    key: [parts.code, memberId ?? contourId ?? '', at, sizes]
      .join('|')
      .replace(/-0\.0+(?=[,|]|$)/g, (zero) => zero.slice(1)),
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
