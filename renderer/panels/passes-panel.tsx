import { Plus, Trash2 } from 'lucide-react';
import type { Job } from '../../core/job';
import { formatLength } from '../../core/units';
import { LengthInput } from '../controls/length-input';
import { addPass } from '../state/edits/add-pass';
import { removePass } from '../state/edits/remove-pass';
import { setPass } from '../state/edits/set-pass';
import { editJob } from '../state/job-edit';
import { passName } from '../state/pass-name';
import { useApp, useAppState } from '../state/use-app';

/** The table of passes: spark gap, stock left, offset and feed of each. */
export function PassesPanel({ job }: { job: Job }) {
  const app = useApp();
  const unit = useAppState((state) => state.unit);
  const last = job.passes.length - 1;
  return (
    <>
      <table className="table">
        <thead>
          <tr>
            <th scope="col">Pass</th>
            <th scope="col">Spark gap</th>
            <th scope="col">Stock left</th>
            <th scope="col">Offset</th>
            <th scope="col">Feed per minute</th>
            <th scope="col">
              <span className="unseen">Take out</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {job.passes.map((pass, index) => (
            <tr key={index}>
              <th scope="row">{passName(index)}</th>
              <td>
                <LengthInput
                  label={`Spark gap, ${passName(index).toLowerCase()}`}
                  value={pass.sparkGap}
                  mayBeZero
                  onCommit={(sparkGap, turning) =>
                    editJob(app, setPass, { pass: index, change: { sparkGap } }, turning)
                  }
                />
              </td>
              <td>
                {index === last ? (
                  'none'
                ) : (
                  <LengthInput
                    label={`Stock left, ${passName(index).toLowerCase()}`}
                    value={pass.stockLeft}
                    mayBeZero
                    onCommit={(stockLeft, turning) =>
                      editJob(app, setPass, { pass: index, change: { stockLeft } }, turning)
                    }
                  />
                )}
              </td>
              <td>{formatLength(job.wire.diameter / 2 + pass.sparkGap + pass.stockLeft, unit)}</td>
              <td>
                <LengthInput
                  label={`Feed, ${passName(index).toLowerCase()}`}
                  value={pass.feed ?? pass.rate / job.blocks.die}
                  onCommit={(feed, turning) =>
                    editJob(app, setPass, { pass: index, change: { feed } }, turning)
                  }
                />
              </td>
              <td>
                <button
                  type="button"
                  className="icon-button"
                  aria-label={`Take out the ${passName(index).toLowerCase()}`}
                  disabled={job.passes.length === 1}
                  onClick={() => editJob(app, removePass, index)}
                >
                  <Trash2 aria-hidden="true" />
                </button>
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      <p className="panel-note">Offset is half the wire, the spark gap and the stock left.</p>
      <button type="button" className="button" onClick={() => editJob(app, addPass, undefined)}>
        <Plus aria-hidden="true" />
        Add a skim
      </button>
    </>
  );
}
