import { useId, useState, type KeyboardEvent } from 'react';
import { sayProblem, type Problem, type Result } from '../../core/problem';
import { endTurning } from '../state/job-edit';
import { useApp } from '../state/use-app';

export interface ValueInputProps<T> {
  /** The accessible name, e.g. "Stock thickness". */
  readonly label: string;
  /** The value as it reads when nobody is typing. */
  readonly text: string;
  readonly read: (text: string) => Result<T>;
  /** `turning`: one of a run of steps with the arrow keys. */
  readonly onCommit: (value: T, turning: boolean) => void;
  /** The value one step up (1) or down (−1); without it the arrow keys do nothing. */
  readonly stepped?: (direction: 1 | -1) => T | null;
  readonly className?: string;
}

/**
 * A value that is edited in place. Enter or leaving takes it over, Escape gives it back, arrow keys turn it. What
 * can't be read stays in the field with a sentence that says why, and the job keeps its old value.
 */
export function ValueInput<T>({ label, text, read, onCommit, stepped, className }: ValueInputProps<T>) {
  const app = useApp();
  const [draft, setDraft] = useState<string | null>(null);
  const [problem, setProblem] = useState<Problem | null>(null);
  const problemId = useId();
  const giveBack = () => {
    setDraft(null);
    setProblem(null);
  };
  const takeOver = () => {
    // A field that was only visited must not round the value to what it shows.
    if (draft === null || draft.trim() === text) {
      giveBack();
      return;
    }
    const value = read(draft);
    if (!value.ok) {
      setProblem(value.problem);
      return;
    }
    onCommit(value.value, false);
    giveBack();
  };
  const onKeyDown = (event: KeyboardEvent<HTMLInputElement>) => {
    if (event.key === 'Enter') takeOver();
    else if (event.key === 'Escape') giveBack();
    else if (event.key === 'ArrowUp' || event.key === 'ArrowDown') {
      const value = stepped?.(event.key === 'ArrowUp' ? 1 : -1) ?? null;
      if (value !== null) onCommit(value, true);
      giveBack();
    } else return;
    event.preventDefault();
    event.stopPropagation();
  };
  return (
    <span className="value-field">
      <input
        className={`value ${className ?? ''}`}
        type="text"
        inputMode="text"
        autoComplete="off"
        spellCheck={false}
        aria-label={label}
        data-typed={draft !== null}
        aria-invalid={problem !== null}
        aria-describedby={problem ? problemId : undefined}
        value={draft ?? text}
        onChange={(event) => {
          setDraft(event.target.value);
          setProblem(null);
        }}
        onFocus={(event) => event.target.select()}
        onBlur={() => {
          takeOver();
          endTurning(app);
        }}
        onKeyDown={onKeyDown}
      />
      {problem && (
        <span className="value-problem" id={problemId} role="alert">
          {sayProblem(problem)}
        </span>
      )}
    </span>
  );
}

/** For what closes on Escape around a field: while something is typed in it, Escape gives that back and closes nothing. */
export function keepOpenWhileTyping(event: Event): void {
  const { target } = event;
  if (target instanceof HTMLElement && target.dataset['typed'] === 'true') event.preventDefault();
}
