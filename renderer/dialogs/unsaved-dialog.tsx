import type { HostFile } from '../../electron/contract/host-api';
import { DialogFrame } from '../controls/dialog-frame';
import { isChanged, jobOf } from '../state/app-state';
import { saveJob } from '../state/commands/save-job';
import { openNow } from '../state/open-file';
import { useApp, useAppState } from '../state/use-app';

/** Asks before opening something else would lose changes. */
export function UnsavedDialog({ file }: { file: HostFile }) {
  const app = useApp();
  const name = useAppState((state) => jobOf(state)?.name ?? '');
  const stay = () => app.store.setState({ waiting: null });
  const saveFirst = async () => {
    await saveJob(app, app.store.getState().file.token);
    // Cancelled or failed: stay, with the changes and what the host said.
    if (isChanged(app.store.getState())) stay();
    else openNow(app, file);
  };
  return (
    <DialogFrame title={`Save the changes to ${name}?`} onClose={stay}>
      <p>{file.name} is about to take its place.</p>
      <div className="dialog-buttons">
        <button type="button" className="button button-strong" onClick={() => void saveFirst()}>
          Save, then open
        </button>
        <button type="button" className="button" onClick={() => openNow(app, file)}>
          Open without saving
        </button>
        <button type="button" className="button" onClick={stay}>
          Stay here
        </button>
      </div>
    </DialogFrame>
  );
}
