import { done, failed, type Result } from '../../core/problem';
import { degrees, radians } from '../../core/units';
import { ValueInput } from './value-input';

export interface NumberInputProps {
  readonly label: string;
  readonly value: number;
  readonly onCommit: (value: number, turning: boolean) => void;
}

/** A share, shown and typed in percent: 0.3 reads "30 %". */
export function ShareInput({ label, value, onCommit }: NumberInputProps) {
  return (
    <ValueInput<number>
      label={label}
      text={`${plain(100 * value)} %`}
      read={(text) => {
        const percent = readNumber(text, '%');
        return percent >= 0 && percent <= 200
          ? done(percent / 100)
          : refused(label, text, 'Type a percentage from 0 to 200.');
      }}
      stepped={(direction) => Math.max(0, Math.round(100 * value + direction)) / 100}
      onCommit={onCommit}
    />
  );
}

/** An angle in radians, shown and typed in degrees. */
export function AngleInput({ label, value, onCommit }: NumberInputProps) {
  return (
    <ValueInput<number>
      label={label}
      text={`${plain(degrees(value))}°`}
      read={(text) => {
        const degree = readNumber(text, '°');
        return Number.isFinite(degree) && Math.abs(degree) <= 360
          ? done(radians(degree))
          : refused(label, text, 'Type degrees, from −360 to 360.');
      }}
      stepped={(direction) => radians(Math.round(degrees(value)) + direction)}
      onCommit={onCommit}
    />
  );
}

export interface CountInputProps extends NumberInputProps {
  readonly most: number;
}

/** A whole number from one up. */
export function CountInput({ label, value, most, onCommit }: CountInputProps) {
  const isFine = (count: number) => Number.isInteger(count) && count >= 1 && count <= most;
  return (
    <ValueInput<number>
      label={label}
      text={String(value)}
      read={(text) => {
        const count = readNumber(text, '');
        return isFine(count) ? done(count) : refused(label, text, `Type a whole number from 1 to ${most}.`);
      }}
      stepped={(direction) => (isFine(value + direction) ? value + direction : null)}
      onCommit={onCommit}
    />
  );
}

const plain = (value: number): string => String(Number(value.toFixed(4)));

/** A decimal point or comma, a real or typed minus sign, and the unit or none; NaN for anything else. */
function readNumber(text: string, unit: string): number {
  const bare = text.trim().replace(unit === '' ? /$/ : new RegExp(`\\s*${unit}$`), '');
  const number = bare.replace(',', '.').replace('−', '-');
  return /^-?(\d+\.?\d*|\.\d+)$/.test(number) ? Number(number) : Number.NaN;
}

const refused = (label: string, text: string, whatToDo: string): Result<number> =>
  failed('number-out-of-range', `${label} can't be "${text.trim()}"`, '', whatToDo);
