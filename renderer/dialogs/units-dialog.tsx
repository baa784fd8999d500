import type { UnitCandidate } from '../../core/drawing/unit-candidates';
import { DialogFrame } from '../controls/dialog-frame';
import { jobOf } from '../state/app-state';
import { setDrawing } from '../state/edits/set-drawing';
import { editJob } from '../state/job-edit';
import { partSize } from '../state/part-size';
import { unitName } from '../state/unit-name';
import { useApp, useAppState } from '../state/use-app';

/** Asks what the numbers of the drawing mean, by how large the part would be. */
export function UnitsDialog({ candidates }: { candidates: readonly UnitCandidate[] }) {
  const app = useApp();
  const fileName = useAppState((state) => jobOf(state)?.drawing.fileName ?? '');
  return (
    <DialogFrame title="How large is the part?" onClose={() => app.store.setState({ unitAsked: false })}>
      <p>
        {fileName} states no unit. Choose the size that the part has; nothing is worked out before you do.
      </p>
      <ul className="sizes">
        {candidates.map((candidate) => (
          <li key={candidate.unit}>
            <button
              type="button"
              className="size"
              onClick={() => {
                app.store.setState({ unitAsked: false });
                editJob(app, setDrawing, { unit: candidate.unit });
              }}
            >
              <span className="size-name">{unitName(candidate.unit)}</span>
              <span className="size-mm">{partSize(candidate, 'mm')}</span>
              <span className="size-inch">{partSize(candidate, 'inch')}</span>
            </button>
          </li>
        ))}
      </ul>
    </DialogFrame>
  );
}
