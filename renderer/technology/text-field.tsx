import { done, failed, type Result } from '../../core/problem';
import { ValueInput } from '../controls/value-input';

export interface TextFieldProps {
  readonly label: string;
  readonly value: string;
  /** Characters. */
  readonly longest: number;
  readonly onCommit: (text: string) => void;
}

/** A few words with their label. */
export function TextField({ label, value, longest, onCommit }: TextFieldProps) {
  const read = (text: string): Result<string> =>
    text.trim().length <= longest
      ? done(text.trim())
      : failed('text-too-long', `${label} has more than ${longest} characters`, '', 'Say it shorter.');
  return (
    <label className="text-field">
      <span>{label}</span>
      <ValueInput label={label} text={value} read={read} onCommit={onCommit} />
    </label>
  );
}
