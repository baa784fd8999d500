import { FolderOpen, RotateCcw, Save } from 'lucide-react';
import { useState } from 'react';
import { sayProblem } from '../../core/problem';
import { shippedTechnology } from '../../core/shipped-technology';
import type { Technology } from '../../core/technology';
import { technologyProblem } from '../../core/technology-file';
import { DialogFrame } from '../controls/dialog-frame';
import { jobOf } from '../state/app-state';
import { setTechnology } from '../state/edits/set-technology';
import { editJob } from '../state/job-edit';
import { openOwnFile, saveTechnology } from '../state/own-files';
import { useApp, useAppState } from '../state/use-app';
import { MachineFields } from './machine-fields';
import { RowTable } from './row-table';
import { TextField } from './text-field';

/** The technology table of the open job; every change in it is a step of the job's history. */
export function TechnologyDialog() {
  const app = useApp();
  const technology = useAppState((state) => jobOf(state)?.technology ?? null);
  const trouble = useAppState((state) => state.trouble);
  const said = useAppState((state) => state.said);
  const [saidBefore] = useState(said);
  const close = () => app.store.setState({ dialog: null });
  if (!technology) return null;
  const problem = technologyProblem(technology) ?? trouble;
  const change = (part: Partial<Technology>, say: string) =>
    editJob(app, setTechnology, { technology: { ...technology, ...part }, say });
  return (
    <DialogFrame title="Technology table" onClose={close} isWide>
      <div className="technology-head">
        <TextField
          label="Name"
          value={technology.name}
          longest={80}
          onCommit={(name) => change({ name }, 'Name of the table')}
        />
        <TextField
          label="Block material"
          value={technology.blockMaterial}
          longest={80}
          onCommit={(blockMaterial) => change({ blockMaterial }, 'Block material of the table')}
        />
        <TextField
          label="Where the numbers come from"
          value={technology.note}
          longest={500}
          onCommit={(note) => change({ note }, 'Note of the table')}
        />
      </div>
      {problem && (
        <p className="technology-problem" role="alert">
          {sayProblem(problem)}
        </p>
      )}
      <RowTable technology={technology} />
      <MachineFields technology={technology} />
      <div className="dialog-buttons">
        <button type="button" className="button" onClick={() => void openOwnFile(app, 'technology')}>
          <FolderOpen aria-hidden="true" />
          Open a table…
        </button>
        <button
          type="button"
          className="button"
          disabled={technologyProblem(technology) !== null}
          onClick={() => void saveTechnology(app)}
        >
          <Save aria-hidden="true" />
          Save as a file…
        </button>
        <button
          type="button"
          className="button"
          onClick={() =>
            editJob(app, setTechnology, {
              technology: shippedTechnology,
              say: 'Starting values of the table',
            })
          }
        >
          <RotateCcw aria-hidden="true" />
          Back to the starting values
        </button>
        {/* The window's own status line is out of reach while the dialog is open. */}
        <span className="technology-said" role="status" aria-label="Done last">
          {said === saidBefore ? '' : said}
        </span>
        <button type="button" className="button button-strong" onClick={close}>
          Done
        </button>
      </div>
    </DialogFrame>
  );
}
