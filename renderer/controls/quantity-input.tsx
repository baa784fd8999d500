import { formatQuantity, parseQuantity, steppedQuantity, type Quantity } from '../../core/quantities';
import { useAppState } from '../state/use-app';
import { ValueInput } from './value-input';

export interface QuantityInputProps {
  readonly label: string;
  readonly quantity: Quantity;
  /** In the unit of the job file; null reads as a dash. */
  readonly value: number | null;
  readonly onCommit: (value: number, turning: boolean) => void;
}

/** A rate, a roughness or a speed in the unit on display; typing may use either unit. */
export function QuantityInput({ label, quantity, value, onCommit }: QuantityInputProps) {
  const unit = useAppState((state) => state.unit);
  return (
    <ValueInput
      label={label}
      text={value === null ? '–' : formatQuantity(value, quantity, unit)}
      read={(text) => parseQuantity(text, quantity, unit)}
      onCommit={onCommit}
      stepped={(direction) => (value === null ? null : steppedQuantity(value, direction, quantity, unit))}
    />
  );
}
