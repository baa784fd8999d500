import { useEffect, useRef } from 'react';
import { contourBox } from '../../core/geometry/contour-measures';
import type { Contour } from '../../core/geometry/contour';
import type { Drawing } from '../../core/drawing/drawing';
import type { Job } from '../../core/job';
import { LengthInput } from '../controls/length-input';
import { setSizeShift } from '../state/edits/set-size-shift';
import { editJob } from '../state/job-edit';
import { partSize } from '../state/part-size';
import { hoverTarget, selectTarget } from '../state/select-target';
import { sameTarget, type Target } from '../state/target';
import { toggleContour } from '../state/toggle-contour';
import { useApp, useAppState } from '../state/use-app';
import { Part } from './part';

interface Row {
  readonly id: string;
  readonly contour: Contour;
  readonly layer: string;
  /** Why it is left out; null where it is taken. */
  readonly reason: string | null;
}

/** More rows than this are found by a click in the picture. */
const mostRows = 200;

/** Every closed contour: whether it is an edge of the part, and how much larger than drawn it is made. */
export function ContourSection({ job, drawing }: { job: Job; drawing: Drawing }) {
  const selected = useAppState((state) => (state.selected?.kind === 'contour' ? state.selected.id : null));
  const all: readonly Row[] = [
    ...drawing.contours.map((contour) => ({ ...contour, reason: null })),
    ...drawing.leftOut,
  ];
  const shown = all.filter(({ id }, i) => i < mostRows || id === selected);
  return (
    <Part
      title="Closed contours"
      aside={`${drawing.contours.length} taken, ${drawing.leftOut.length} left out`}
    >
      <p className="panel-note">
        Click a contour in the picture to pick it out; a double click, or X, takes it or leaves it out.
      </p>
      <table className="table rows" aria-label="Closed contours">
        <thead>
          <tr>
            <th scope="col">Edge</th>
            <th scope="col">Size</th>
            <th scope="col">Layer</th>
            <th scope="col">Size shift</th>
          </tr>
        </thead>
        <tbody>
          {shown.map((row) => (
            <ContourRow key={row.id} row={row} sizeShift={job.sizeShifts[row.id] ?? 0} />
          ))}
        </tbody>
      </table>
      {all.length > shown.length && <p className="panel-note">And {all.length - shown.length} more.</p>}
    </Part>
  );
}

function ContourRow({ row: { id, contour, layer, reason }, sizeShift }: { row: Row; sizeShift: number }) {
  const app = useApp();
  const unit = useAppState((state) => state.unit);
  const target: Target = { kind: 'contour', id };
  const isSelected = useAppState((state) => sameTarget(state.selected, { kind: 'contour', id }));
  const isHovered = useAppState((state) => sameTarget(state.hovered, { kind: 'contour', id }));
  const row = useRef<HTMLTableRowElement>(null);
  useEffect(() => {
    if (isSelected) row.current?.scrollIntoView({ block: 'nearest' });
  }, [isSelected]);
  const { minX, minY, maxX, maxY } = contourBox(contour);
  return (
    <tr
      ref={row}
      data-contour={id}
      data-selected={isSelected}
      data-hovered={isHovered}
      data-aside={reason !== null}
      onPointerEnter={() => hoverTarget(app, target)}
      onPointerLeave={() => hoverTarget(app, null)}
    >
      <th scope="row">
        <span className="tick">
          <input
            type="checkbox"
            aria-label={`Contour ${id} is an edge of the part`}
            checked={reason === null}
            onChange={() => toggleContour(app, id)}
          />
          <button type="button" className="link" onClick={() => selectTarget(app, target, true)}>
            {id}
          </button>
        </span>
      </th>
      <td>{partSize({ width: maxX - minX, height: maxY - minY }, unit)}</td>
      <td className="cut-short" title={layer}>
        {layer}
      </td>
      <td className="wraps">
        {reason ?? (
          <LengthInput
            label={`Size shift of ${id} per side`}
            value={sizeShift}
            mayBeZero
            mayBeNegative
            onCommit={(shift, turning) =>
              editJob(app, setSizeShift, { contourId: id, sizeShift: shift }, turning)
            }
          />
        )}
      </td>
    </tr>
  );
}
