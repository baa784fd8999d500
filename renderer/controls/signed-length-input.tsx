import { formatLength, parseLength } from '../../core/units';
import { useAppState } from '../state/use-app';
import { ValueInput } from './value-input';

export interface SignedLengthInputProps {
  readonly label: string;
  /** mm, of either sign. */
  readonly value: number;
  readonly onCommit: (mm: number, turning: boolean) => void;
}

/** A length that may be negative, in the unit on display; typing may use any unit, the arrow keys turn it by a µm or a tenth of a thousandth. */
export function SignedLengthInput({ label, value, onCommit }: SignedLengthInputProps) {
  const unit = useAppState((state) => state.unit);
  const step = unit === 'inch' ? 25.4 / 10_000 : 1 / 1000;
  return (
    <ValueInput
      label={label}
      text={formatLength(value, unit)}
      read={(text) => parseLength(text, { unit })}
      onCommit={onCommit}
      // Counted in whole steps: 0.1 + 0.2 is not what a person turns to.
      stepped={(direction) => (Math.round(value / step) + direction) * step}
    />
  );
}
