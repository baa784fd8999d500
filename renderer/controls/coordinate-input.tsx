import { formatLength, parseLength } from '../../core/units';
import { useAppState } from '../state/use-app';
import { ValueInput } from './value-input';

export interface CoordinateInputProps {
  readonly label: string;
  /** mm. */
  readonly value: number;
  readonly onCommit: (mm: number, turning: boolean) => void;
}

/** A coordinate in the unit on display; of either sign. Arrow keys move it by a tenth of a mm, or 0.005 in. */
export function CoordinateInput({ label, value, onCommit }: CoordinateInputProps) {
  const unit = useAppState((state) => state.unit);
  const step = unit === 'inch' ? 0.127 : 0.1;
  return (
    <ValueInput
      label={label}
      text={formatLength(value, unit)}
      read={(text) => parseLength(text, { unit })}
      onCommit={onCommit}
      stepped={(direction) => (Math.round(value / step) + direction) * step}
    />
  );
}
