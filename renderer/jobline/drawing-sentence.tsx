import type { Job } from '../../core/job';
import { drawingUnits, type DrawingUnit } from '../../core/units';
import { Choice } from '../controls/choice';
import { LengthInput } from '../controls/length-input';
import { drawingOf } from '../state/app-state';
import { setDrawing } from '../state/edits/set-drawing';
import { editJob } from '../state/job-edit';
import { useApp, useAppState } from '../state/use-app';

/** The drawing, its unit, the gaps that are closed, and what of it is not used. */
export function DrawingSentence({ job }: { job: Job }) {
  const app = useApp();
  const drawing = useAppState(drawingOf);
  const unused = drawing?.unused.reduce((sum, { count }) => sum + count, 0) ?? 0;
  const isRead = useAppState((state) => state.survey !== null);
  const account = !drawing
    ? 'no contour found'
    : unused === 0
      ? 'all of it used'
      : `${unused} ${unused === 1 ? 'entity' : 'entities'} not used`;
  return (
    <>
      Drawing <span className="file-name">{job.drawing.fileName}</span> in{' '}
      <span className="glued">
        <Choice
          label="Drawing unit"
          value={job.drawing.unit ?? 'as stated'}
          text={job.drawing.unit ?? drawing?.unit ?? 'the unit it states'}
          options={[
            { value: 'as stated', name: 'as the drawing states' },
            ...(Object.keys(drawingUnits) as DrawingUnit[]).map((unit) => ({ value: unit, name: unit })),
          ]}
          onChoose={(unit) => editJob(app, setDrawing, { unit: unit === 'as stated' ? null : unit })}
        />
        ,
      </span>{' '}
      gaps up to{' '}
      <LengthInput
        label="Largest gap to close"
        value={job.drawing.gapTolerance}
        onCommit={(gapTolerance) => editJob(app, setDrawing, { gapTolerance })}
      />{' '}
      closed,{' '}
      <span className="glued">
        {isRead ? (
          <button
            type="button"
            className="value value-panel"
            aria-label={`Drawing account: ${account}`}
            onClick={() => app.store.setState({ pane: 'drawing' })}
          >
            {account}
          </button>
        ) : (
          'not read yet'
        )}
        .
      </span>
    </>
  );
}
