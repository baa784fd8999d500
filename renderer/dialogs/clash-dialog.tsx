import type { Problem } from '../../core/problem';
import { DialogFrame } from '../controls/dialog-frame';
import { jobOf } from '../state/app-state';
import { saveJob } from '../state/commands/save-job';
import { useApp, useAppState } from '../state/use-app';

/** Asks what is to become of a job file that somebody else has changed since it was opened here. */
export function ClashDialog({ problem }: { problem: Problem }) {
  const app = useApp();
  const name = useAppState((state) => jobOf(state)?.name ?? '');
  const leave = () => app.store.setState({ clash: null });
  const save = (token: string | null, replaceChanged: boolean) => {
    leave();
    void saveJob(app, token, replaceChanged);
  };
  return (
    <DialogFrame title={`${name} was changed by somebody else`} onClose={leave}>
      <p>{problem.what}. Nothing has been written.</p>
      <p>If you replace it, what they saved is kept beside it as the previous version.</p>
      <div className="dialog-buttons">
        <button type="button" className="button button-strong" onClick={() => save(null, false)}>
          Save under another name
        </button>
        <button type="button" className="button" onClick={() => save(app.store.getState().file.token, true)}>
          Replace their version
        </button>
        <button type="button" className="button" onClick={leave}>
          Don’t save now
        </button>
      </div>
    </DialogFrame>
  );
}
