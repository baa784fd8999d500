import type { Finding } from '../finding';
import { findingOf } from '../finding-of';
import { sayLength } from '../say';
import type { DrawingUnit } from '../units';
import type { UnitCandidate } from './unit-candidates';

/**
 * A decision where the unit that the file states makes a part of an unusual size and another unit a usual one: a header
 * may be wrong. None once a person has said which unit it is (`isAnswered`).
 */
export function unitFindings(
  candidates: readonly UnitCandidate[],
  unit: DrawingUnit,
  isAnswered: boolean,
): readonly Finding[] {
  const stated = candidates.find((candidate) => candidate.unit === unit);
  const others = candidates.filter((candidate) => candidate.isUsual && candidate.unit !== unit);
  if (isAnswered || !stated || stated.isUsual || others.length === 0) return [];
  const size = ({ width, height }: UnitCandidate): string => `${sayLength(width)} × ${sayLength(height)}`;
  return [
    findingOf({
      code: 'unit-doubtful',
      weight: 'decide',
      title: 'Is this the unit?',
      message: `The file states ${unit}, and the part is then ${size(stated)}.`,
      numbers: [
        { label: 'Width', value: stated.width, kind: 'length' },
        { label: 'Height', value: stated.height, kind: 'length' },
      ],
      cures: others.map((other) => ({
        kind: 'unit' as const,
        unit: other.unit,
        say: `Read in ${other.unit} it is ${size(other)}.`,
      })),
    }),
  ];
}
