import { done, failed, type Result } from '../../core/problem';
import { formatLength, mmPerInch, parseLength, type DisplayUnit } from '../../core/units';
import { useAppState } from '../state/use-app';
import { ValueInput } from './value-input';

export interface LengthInputProps {
  readonly label: string;
  /** mm. */
  readonly value: number;
  readonly onCommit: (mm: number, turning: boolean) => void;
  readonly mayBeZero?: boolean;
  /** Less than zero too, and zero with it. */
  readonly mayBeNegative?: boolean;
  /** Lets the field take percentages of this stock thickness, mm. */
  readonly thickness?: number;
  readonly className?: string;
}

/** A length in the unit on display; typing may use any unit. */
export function LengthInput({
  label,
  value,
  onCommit,
  mayBeZero = false,
  mayBeNegative = false,
  thickness,
  ...rest
}: LengthInputProps) {
  const unit = useAppState((state) => state.unit);
  return (
    <ValueInput
      {...rest}
      label={label}
      text={formatLength(value, unit)}
      read={(text) => {
        const reading = thickness === undefined ? { unit } : { unit, thickness };
        return mayBeNegative ? parseLength(text, reading) : readLength(text, label, mayBeZero, reading);
      }}
      onCommit={onCommit}
      stepped={(direction) =>
        steppedLength(value, direction, unit, mayBeNegative ? 'any' : mayBeZero ? 'zero' : 'above')
      }
    />
  );
}

/** A length that makes sense in a job: more than zero, or at least zero. */
export function readLength(
  text: string,
  label: string,
  mayBeZero: boolean,
  reading: Parameters<typeof parseLength>[1],
): Result<number> {
  const length = parseLength(text, reading);
  if (!length.ok) return length;
  if (length.value > 0 || (mayBeZero && length.value === 0)) return done(length.value);
  return failed(
    'length-out-of-range',
    `${label} can't be ${text.trim()}`,
    '',
    mayBeZero ? 'Type zero or more.' : 'Type more than zero.',
  );
}

/**
 * One step of the second digit in the unit on display: 0.25 → 0.26 mm, 1.5 → 1.6 mm. Null where the step would leave
 * the range.
 */
export function steppedLength(
  mm: number,
  direction: 1 | -1,
  unit: DisplayUnit,
  range: 'above' | 'zero' | 'any',
): number | null {
  const perUnit = unit === 'inch' ? mmPerInch : 1;
  const shown = mm / perUnit;
  const digit = shown === 0 ? -3 : Math.floor(Math.log10(Math.abs(shown))) - 1;
  const step = 10 ** Math.max(digit, unit === 'inch' ? -5 : -4);
  // Counted in whole steps: 0.1 + 0.2 is not what a person turns to.
  const next = (Math.round(shown / step) + direction) * step;
  const clean = Number(next.toPrecision(10));
  const isInRange = clean > 0 || range === 'any' || (range === 'zero' && clean === 0);
  return isInRange ? clean * perUnit : null;
}
