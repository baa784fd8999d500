import { Copy, Plus, Trash2 } from 'lucide-react';
import { Fragment } from 'react';
import type { Technology, TechnologyRow } from '../../core/technology';
import { formatLength } from '../../core/units';
import { LengthInput } from '../controls/length-input';
import { changeName } from '../state/edits/set-pass';
import { setTechnology } from '../state/edits/set-technology';
import { editJob } from '../state/job-edit';
import { withoutPass, withPass, withSkim } from '../state/pass-list';
import { passName } from '../state/pass-name';
import { useApp, useAppState } from '../state/use-app';
import { PassCells, PassHeadings } from './pass-cells';
import { sortedRows, withCopy, withoutRow, withRow } from './table-rows';

/** The rows of the table by wire and height, thick wire first, each with its passes. */
export function RowTable({ technology }: { technology: Technology }) {
  const app = useApp();
  const unit = useAppState((state) => state.unit);
  const put = (next: Technology, say: string, part?: string) =>
    editJob(app, setTechnology, { technology: next, say, ...(part ? { part } : {}) }, part !== undefined);
  return (
    <div className="technology-rows" role="region" aria-label="Rows of the table" tabIndex={0}>
      <table className="table" aria-label="Rows by wire and height">
        <thead>
          <tr>
            <th scope="col">Wire</th>
            <th scope="col">Blocks up to</th>
            <th scope="col">Pass</th>
            <PassHeadings />
            <th scope="col">
              <span className="unseen">Change the passes</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {sortedRows(technology).map(({ row, index }) => {
            const name = `${formatLength(row.wire, unit)} wire up to ${formatLength(row.height, unit)}`;
            const change = (part: Partial<TechnologyRow>, say: string, turn?: string) =>
              put(withRow(technology, index, part), `${say}, ${name}`, turn && `${index}/${turn}`);
            return (
              <Fragment key={index}>
                {row.passes.map((pass, number) => {
                  const of = `${passName(number).toLowerCase()}, ${name}`;
                  return (
                    <tr key={number} data-first={number === 0}>
                      {number === 0 && (
                        <>
                          <th scope="rowgroup" rowSpan={row.passes.length}>
                            <LengthInput
                              label={`Wire of the row for ${name}`}
                              value={row.wire}
                              onCommit={(wire, turning) =>
                                change({ wire }, 'Wire', turning ? 'wire' : undefined)
                              }
                            />
                          </th>
                          <th scope="rowgroup" rowSpan={row.passes.length}>
                            <LengthInput
                              label={`Height of the row for ${name}`}
                              value={row.height}
                              onCommit={(height, turning) =>
                                change({ height }, 'Height', turning ? 'height' : undefined)
                              }
                            />
                            <RowButtons
                              name={name}
                              onCopy={() => put(withCopy(technology, index), `Copy of the row for ${name}`)}
                              onSkim={() => change({ passes: withSkim(row.passes) }, 'One more skim')}
                              onRemove={() =>
                                put(withoutRow(technology, index), `Without the row for ${name}`)
                              }
                            />
                          </th>
                        </>
                      )}
                      <th scope="row">{passName(number)}</th>
                      <PassCells
                        pass={pass}
                        isLast={number === row.passes.length - 1}
                        of={of}
                        onChange={(part, turning) =>
                          change(
                            { passes: withPass(row.passes, number, part) },
                            changeName(part),
                            turning ? `${number}/${Object.keys(part).join()}` : undefined,
                          )
                        }
                      />
                      <td>
                        <button
                          type="button"
                          className="icon-button"
                          aria-label={`Take out the ${of}`}
                          disabled={row.passes.length === 1}
                          onClick={() => change({ passes: withoutPass(row.passes, number) }, 'One pass less')}
                        >
                          <Trash2 aria-hidden="true" />
                        </button>
                      </td>
                    </tr>
                  );
                })}
              </Fragment>
            );
          })}
        </tbody>
      </table>
    </div>
  );
}

interface RowButtonsProps {
  readonly name: string;
  readonly onCopy: () => void;
  readonly onSkim: () => void;
  readonly onRemove: () => void;
}

function RowButtons({ name, onCopy, onSkim, onRemove }: RowButtonsProps) {
  return (
    <span className="row-buttons">
      <button type="button" className="icon-button" aria-label={`Add a skim, ${name}`} onClick={onSkim}>
        <Plus aria-hidden="true" />
      </button>
      <button type="button" className="icon-button" aria-label={`Copy the row for ${name}`} onClick={onCopy}>
        <Copy aria-hidden="true" />
      </button>
      <button
        type="button"
        className="icon-button"
        aria-label={`Take out the row for ${name}`}
        onClick={onRemove}
      >
        <Trash2 aria-hidden="true" />
      </button>
    </span>
  );
}
