import { useId, useState, type FormEvent } from 'react';
import type { Finding } from '../../core/finding';
import { settleFinding } from '../state/edits/settle-finding';
import { editJob } from '../state/job-edit';
import { useApp } from '../state/use-app';

/** Accepting a finding as it is, with the reason that goes onto the sheet; and taking that back. */
export function Settle({ finding, reason }: { finding: Finding; reason: string | null }) {
  const app = useApp();
  const [isAsking, setAsking] = useState(false);
  if (finding.weight !== 'decide') return null;
  if (reason !== null) {
    return (
      <p className="settled">
        <span>Accepted: {reason}</span>
        <button
          type="button"
          className="button button-small"
          onClick={() => editJob(app, settleFinding, { finding, reason: null })}
        >
          Reopen
        </button>
      </p>
    );
  }
  if (!isAsking) {
    return (
      <p className="settle-offer">
        <button type="button" className="button button-small" onClick={() => setAsking(true)}>
          Accept as is…
        </button>
      </p>
    );
  }
  return (
    <SettleForm
      onCancel={() => setAsking(false)}
      onSettle={(words) => {
        setAsking(false);
        editJob(app, settleFinding, { finding, reason: words });
      }}
    />
  );
}

interface SettleFormProps {
  readonly onSettle: (reason: string) => void;
  readonly onCancel: () => void;
}

function SettleForm({ onSettle, onCancel }: SettleFormProps) {
  const [words, setWords] = useState('');
  const id = useId();
  const submit = (event: FormEvent) => {
    event.preventDefault();
    if (words.trim() !== '') onSettle(words);
  };
  return (
    <form
      className="settle-form"
      onSubmit={submit}
      onKeyDown={(event) => {
        if (event.key !== 'Escape') return;
        event.stopPropagation();
        onCancel();
      }}
    >
      <label htmlFor={id}>Why is it accepted? Goes onto the sheet.</label>
      <input id={id} type="text" value={words} autoFocus onChange={(event) => setWords(event.target.value)} />
      <div className="settle-buttons">
        <button type="submit" className="button button-small button-strong" disabled={words.trim() === ''}>
          Accept
        </button>
        <button type="button" className="button button-small" onClick={onCancel}>
          Cancel
        </button>
      </div>
    </form>
  );
}
