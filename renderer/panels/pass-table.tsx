import { Plus, Trash2 } from 'lucide-react';
import { heightOf, passesOf, type Job } from '../../core/job';
import type { PartName } from '../../core/plan';
import { QuantityInput } from '../controls/quantity-input';
import { addPass } from '../state/edits/add-pass';
import { removePass } from '../state/edits/remove-pass';
import { setPass } from '../state/edits/set-pass';
import { editJob } from '../state/job-edit';
import { passName } from '../state/pass-name';
import { useApp } from '../state/use-app';
import { PassCells, PassHeadings } from '../technology/pass-cells';
import { OffsetTable } from './offset-table';

export interface PassTableProps {
  readonly job: Job;
  readonly part: PartName;
  /** Whose passes these are; null: both members'. */
  readonly caption: string | null;
}

/** The passes of one member, or of both, and the offsets that come of them. */
export function PassTable({ job, part, caption }: PassTableProps) {
  const app = useApp();
  const passes = passesOf(job, part);
  const whose = caption === null ? '' : ` of the ${part}`;
  return (
    <>
      <table className="table" aria-label={`Passes${whose}`}>
        {caption !== null && <caption>{caption}</caption>}
        <thead>
          <tr>
            <th scope="col">Pass</th>
            <PassHeadings />
            <th scope="col">Feed</th>
            <th scope="col">
              <span className="unseen">Take out</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {passes.map((pass, index) => {
            const of = `${passName(index).toLowerCase()}${whose}`;
            return (
              <tr key={index}>
                <th scope="row">{passName(index)}</th>
                <PassCells
                  pass={pass}
                  isLast={index === passes.length - 1}
                  of={of}
                  onChange={(change, turning) =>
                    editJob(app, setPass, { part, pass: index, change }, turning)
                  }
                />
                <td>
                  <QuantityInput
                    label={`Feed, ${of}`}
                    quantity="feed"
                    value={pass.feed ?? pass.rate / heightOf(job, part)}
                    onCommit={(feed, turning) =>
                      editJob(app, setPass, { part, pass: index, change: { feed } }, turning)
                    }
                  />
                </td>
                <td>
                  <button
                    type="button"
                    className="icon-button"
                    aria-label={`Take out the ${of}`}
                    disabled={passes.length === 1}
                    onClick={() => editJob(app, removePass, { part, pass: index })}
                  >
                    <Trash2 aria-hidden="true" />
                  </button>
                </td>
              </tr>
            );
          })}
        </tbody>
      </table>
      <OffsetTable job={job} part={part} />
      <button type="button" className="button" onClick={() => editJob(app, addPass, part)}>
        <Plus aria-hidden="true" />
        Add a skim{whose}
      </button>
    </>
  );
}
