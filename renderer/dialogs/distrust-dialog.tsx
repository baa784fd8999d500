import type { OpenedJob } from '../../core/open-job-file';
import { DialogFrame } from '../controls/dialog-frame';
import { useApp } from '../state/use-app';

/** Says what of a job file could not be trusted, before anyone works on with it. */
export function DistrustDialog({ opened: { isNewer, dropped } }: { opened: OpenedJob }) {
  const app = useApp();
  const close = () => app.store.setState({ distrust: null });
  return (
    <DialogFrame title={isNewer ? 'Saved by a newer Diewright' : 'The job file is damaged'} onClose={close}>
      {isNewer && (
        <p>
          This program does not know all that is in the file. It is open to look at; saving makes a file of
          its own and leaves this one as it is.
        </p>
      )}
      {dropped.length > 0 && (
        <>
          <p>
            {isNewer ? 'Not taken over:' : 'What could not be trusted was replaced or left out. Check it:'}
          </p>
          <ul className="dropped" tabIndex={0} aria-label="What was not taken over">
            {dropped.map((sentence) => (
              <li key={sentence}>{sentence}.</li>
            ))}
          </ul>
        </>
      )}
      <div className="dialog-buttons">
        <button type="button" className="button button-strong" onClick={close}>
          I have read it
        </button>
      </div>
    </DialogFrame>
  );
}
