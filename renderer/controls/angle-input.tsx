import { done, failed, type Result } from '../../core/problem';
import { degrees, radians } from '../../core/units';
import { ValueInput } from './value-input';

export interface AngleInputProps {
  readonly label: string;
  /** Radians. */
  readonly value: number;
  readonly onCommit: (radians: number, turning: boolean) => void;
}

/** An angle in degrees, of either sign; the arrow keys turn it by a hundredth of a degree. */
export function AngleInput({ label, value, onCommit }: AngleInputProps) {
  return (
    <ValueInput
      label={label}
      text={`${Number(degrees(value).toFixed(5))}°`}
      read={readAngle}
      onCommit={onCommit}
      stepped={(direction) => radians((Math.round(degrees(value) * 100) + direction) / 100)}
    />
  );
}

/** "0.5", "0,5°", "-1.25 deg" in radians. */
export function readAngle(text: string): Result<number> {
  const number = /^\s*([-+−]?(?:\d+[.,]?\d*|[.,]\d+))\s*(?:°|deg(?:rees?)?)?\s*$/i.exec(text)?.[1];
  if (number !== undefined) return done(radians(Number(number.replace(',', '.').replace('−', '-'))));
  return failed(
    'angle-not-read',
    `"${text.trim()}" is not an angle`,
    '',
    'Type degrees, such as 0.5 or -1.25°.',
  );
}
