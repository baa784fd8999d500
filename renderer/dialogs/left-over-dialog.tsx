import type { KeptDraft } from '../../electron/contract/host-api';
import { DialogFrame } from '../controls/dialog-frame';
import { forgetDraft, openDraft } from '../state/open-draft';
import { useApp } from '../state/use-app';

/** Offers the unsaved work of windows that ended before it was saved. */
export function LeftOverDialog({ drafts }: { drafts: readonly KeptDraft[] }) {
  const app = useApp();
  const later = () => app.store.setState({ leftOver: [] });
  return (
    <DialogFrame title="Work that was not saved" onClose={later}>
      <p>Diewright ended before this was saved. It is kept until you open it or throw it away.</p>
      <ul className="left-over">
        {drafts.map((draft) => (
          <li key={draft.id}>
            <span className="left-over-name">{draft.name}</span>
            <span className="left-over-time">{new Date(draft.keptAt).toLocaleString()}</span>
            <button
              type="button"
              className="button button-strong"
              onClick={() => void openDraft(app, draft)}
              aria-label={`Open the unsaved work on ${draft.name}`}
            >
              Open
            </button>
            <button
              type="button"
              className="button"
              onClick={() => void forgetDraft(app, draft)}
              aria-label={`Throw away the unsaved work on ${draft.name}`}
            >
              Throw away
            </button>
          </li>
        ))}
      </ul>
      <div className="dialog-buttons">
        <button type="button" className="button" onClick={later}>
          Later
        </button>
      </div>
    </DialogFrame>
  );
}
