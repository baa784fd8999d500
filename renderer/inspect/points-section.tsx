import { Trash2, Upload } from 'lucide-react';
import type { MeasuredSet } from '../../core/inspection-settings';
import { formatLength } from '../../core/units';
import { sayProblem } from '../../core/problem';
import { Choice } from '../controls/choice';
import { Part } from '../drawing/part';
import { choosePoints } from '../host/choose-file';
import type { App } from '../state/app-store';
import { jobOf } from '../state/app-state';
import { setInspection } from '../state/edits/set-inspection';
import { addPoints, importPoints } from '../state/import-points';
import { editJob } from '../state/job-edit';
import { setInspect } from '../state/set-inspect';
import { useApp, useAppState } from '../state/use-app';
import { FitPart } from './fit-part';
import { MeasuredPairPart } from './measured-pair-part';
import { PointsPart } from './points-part';
import { ProfilePart } from './profile-part';

/** Measured points against the drawing: where they come from, how they are fitted, and the verdict. */
export function PointsSection() {
  const app = useApp();
  const job = useAppState(jobOf);
  const { set: index, measured } = useAppState((state) => state.inspect);
  const set = job?.inspection.measured[index] ?? null;
  const answer = measured?.measured[index];
  return (
    <>
      <Part title="Measured points" aside={`${job?.inspection.measured.length ?? 0} sets`}>
        {job && set ? (
          <>
            <SetChoice />
            <SetLine set={set} index={index} />
          </>
        ) : (
          <p className="panel-note">
            A list of x and y from a vision system or a coordinate measuring machine: one point a line, with a
            name and a feature where it has them.
          </p>
        )}
        <UnitQuestion />
        <button type="button" className="button" onClick={() => void readList(app)}>
          <Upload aria-hidden="true" />
          Read a list…
        </button>
      </Part>
      {job && <ProfilePart job={job} />}
      {job && set && <FitPart job={job} set={set} index={index} />}
      {answer && !answer.ok && <p className="panel-note side-note">{sayProblem(answer.problem)}</p>}
      {job && answer?.ok && <PointsPart compared={answer.value} zone={job.inspection.profile} />}
      <MeasuredPairPart />
    </>
  );
}

async function readList(app: App): Promise<void> {
  const file = await choosePoints(window);
  if (file) importPoints(app, file);
}

function SetChoice() {
  const app = useApp();
  const sets = useAppState((state) => jobOf(state)?.inspection.measured);
  const index = useAppState((state) => state.inspect.set);
  const chosen = sets?.[index];
  if (!sets || !chosen) return null;
  return (
    <Choice
      label="Set of points"
      value={String(index)}
      text={chosen.name}
      options={sets.map(({ name, points }, k) => ({
        value: String(k),
        name,
        aside: `${points.length} points`,
      }))}
      onChoose={(set) => setInspect(app, { set: Number(set), pointedRow: null })}
    />
  );
}

function SetLine({ set, index }: { set: MeasuredSet; index: number }) {
  const app = useApp();
  const job = useAppState(jobOf);
  const remove = () => {
    if (!job) return;
    const measured = job.inspection.measured.filter((_, k) => k !== index);
    editJob(app, setInspection, { change: { measured }, say: `Points ${set.name} taken out` });
    setInspect(app, { set: Math.max(0, index - 1), pointedRow: null });
  };
  return (
    <div className="plain-row">
      <span>{set.points.length} points</span>
      <span className="panel-note">from {set.fileName}</span>
      <button type="button" className="icon-button" aria-label={`Take out ${set.name}`} onClick={remove}>
        <Trash2 aria-hidden="true" />
      </button>
    </div>
  );
}

/** A list that states no unit is a question, with the sizes that the points would have. */
function UnitQuestion() {
  const app = useApp();
  const waiting = useAppState((state) => state.inspect.waitingPoints);
  const unit = useAppState((state) => state.unit);
  if (!waiting) return null;
  const { fileName, points, likely } = waiting;
  const xs = points.map(({ x }) => x);
  const width =
    xs.reduce((a, b) => Math.max(a, b), -Infinity) - xs.reduce((a, b) => Math.min(a, b), Infinity);
  return (
    <div className="inspect-question" role="group" aria-label="Unit of the list">
      <p>
        {fileName} does not say its unit. In mm its points are {formatLength(width, unit)} wide, in inch{' '}
        {formatLength(width * 25.4, unit)}.{likely && ` The part's own size speaks for ${likely}.`}
      </p>
      <div className="inspect-buttons">
        {(['mm', 'inch'] as const).map((one) => (
          <button
            key={one}
            type="button"
            className={`button button-small${one === likely ? ' button-strong' : ''}`}
            onClick={() => addPoints(app, fileName, points, one)}
          >
            They are in {one}
          </button>
        ))}
        <button
          type="button"
          className="button button-small"
          onClick={() => setInspect(app, { waitingPoints: null })}
        >
          Leave it
        </button>
      </div>
    </div>
  );
}
