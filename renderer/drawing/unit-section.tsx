import { RadioGroup } from 'radix-ui';
import type { DrawingSurvey } from '../../core/drawing/survey-drawing';
import type { UnitCandidate } from '../../core/drawing/unit-candidates';
import type { Job } from '../../core/job';
import type { DrawingUnit } from '../../core/units';
import { setDrawing } from '../state/edits/set-drawing';
import { editJob } from '../state/job-edit';
import { partSize } from '../state/part-size';
import { unitName } from '../state/unit-name';
import { useApp } from '../state/use-app';
import { Part } from './part';

/** What the drawing's numbers are in, by how large the part then is. */
export function UnitSection({ job, survey: { units } }: { job: Job; survey: DrawingSurvey }) {
  const app = useApp();
  const stated = units.find(({ isStated }) => isStated)?.unit ?? null;
  const choose = (unit: DrawingUnit) => editJob(app, setDrawing, { unit: unit === stated ? null : unit });
  return (
    <Part title="Unit" aside={stated ? `the file states ${stated}` : 'the file states none'}>
      <RadioGroup.Root
        className="choices"
        aria-label="Unit of the drawing"
        value={job.drawing.unit ?? stated ?? ''}
        onValueChange={(unit) => choose(unit as DrawingUnit)}
      >
        {units.map((candidate) => (
          <UnitChoice key={candidate.unit} candidate={candidate} />
        ))}
      </RadioGroup.Root>
    </Part>
  );
}

function UnitChoice({ candidate }: { candidate: UnitCandidate }) {
  return (
    <RadioGroup.Item className="choice" value={candidate.unit} data-unusual={!candidate.isUsual}>
      <span className="choice-dot" aria-hidden="true" />
      <span className="choice-name">{unitName(candidate.unit)}</span>
      <span className="choice-size">{partSize(candidate, 'mm')}</span>
      <span className="choice-size">{partSize(candidate, 'inch')}</span>
    </RadioGroup.Item>
  );
}
