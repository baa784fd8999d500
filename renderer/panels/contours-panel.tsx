import { contourBox } from '../../core/geometry/contour-measures';
import type { DrawingContour } from '../../core/drawing/drawing';
import type { ContourUse, Job } from '../../core/job';
import { formatLengthNumber, type DisplayUnit } from '../../core/units';
import { Choice } from '../controls/choice';
import { jobOf } from '../state/app-state';
import { setUse } from '../state/edits/set-use';
import { editJob } from '../state/job-edit';
import { hoverTarget } from '../state/select-target';
import { useApp, useAppState } from '../state/use-app';

/** Every contour of the drawing and what it is for. */
export function ContoursPanel() {
  const app = useApp();
  const job = useAppState(jobOf);
  const plan = useAppState((state) => state.made?.plan ?? null);
  const unit = useAppState((state) => state.unit);
  if (!plan || !job) return <p className="panel-note">The drawing has not been read yet.</p>;
  return (
    <div className="panel-scroll">
      <table className="table" aria-label="Contours">
        <thead>
          <tr>
            <th scope="col">Contour</th>
            <th scope="col">Size, {unit}</th>
            <th scope="col">Layer</th>
            <th scope="col">Use</th>
          </tr>
        </thead>
        <tbody>
          {plan.drawing.contours.map((contour) => {
            const pair = plan.pairs.find(({ contourId }) => contourId === contour.id);
            return (
              <tr
                key={contour.id}
                onPointerEnter={() => hoverTarget(app, pair ? { kind: 'member', id: pair.die.id } : null)}
                onPointerLeave={() => hoverTarget(app, null)}
              >
                <th scope="row">{contour.id}</th>
                <td>{sizeOf(contour, unit)}</td>
                <td>{contour.layer}</td>
                <td>
                  <UseChoice contour={contour} job={job} />
                </td>
              </tr>
            );
          })}
        </tbody>
      </table>
    </div>
  );
}

type Choosable = ContourUse | 'by the rule';

function UseChoice({ contour, job }: { contour: DrawingContour; job: Job }) {
  const app = useApp();
  const rule = contour.depth % 2 === 0 ? 'blank' : 'pierce';
  return (
    <Choice<Choosable>
      label={`Use of ${contour.id}`}
      value={job.uses[contour.id] ?? 'by the rule'}
      text={useNames[job.uses[contour.id] ?? rule]}
      options={[
        { value: 'by the rule', name: 'by the rule', aside: rule },
        ...(['blank', 'pierce', 'mate', 'leave out'] as const).map((value) => ({
          value,
          name: useNames[value],
        })),
      ]}
      onChoose={(use) =>
        editJob(app, setUse, { contourId: contour.id, use: use === 'by the rule' ? null : use })
      }
    />
  );
}

const useNames: Readonly<Record<ContourUse, string>> = {
  blank: 'blank',
  pierce: 'pierce',
  mate: 'plug and hole',
  'leave out': 'leave out',
};

function sizeOf({ contour }: DrawingContour, unit: DisplayUnit): string {
  const box = contourBox(contour);
  const side = (mm: number) => formatLengthNumber(mm, unit);
  return `${side(box.maxX - box.minX)} × ${side(box.maxY - box.minY)}`;
}
