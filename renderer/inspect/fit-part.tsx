import type { Job } from '../../core/job';
import type { MeasuredSet } from '../../core/inspection-settings';
import { measuringTargets } from '../../core/inspect/measuring-targets';
import { Choice } from '../controls/choice';
import { Part } from '../drawing/part';
import { setInspection } from '../state/edits/set-inspection';
import { editJob } from '../state/job-edit';
import { useApp, useAppState } from '../state/use-app';

type Fit = MeasuredSet['fit'];

const methods: readonly { readonly value: Fit['method']; readonly name: string; readonly aside: string }[] = [
  { value: 'least squares', name: 'least squares', aside: 'least sum of squared deviations' },
  { value: 'minimum zone', name: 'minimum zone', aside: 'least largest deviation' },
  { value: 'as measured', name: 'fixed datum', aside: 'as it was measured' },
];

const freedoms: readonly (readonly [keyof Fit['freedom'], string])[] = [
  ['shiftX', 'shift in x'],
  ['shiftY', 'shift in y'],
  ['turn', 'turn'],
];

/** What the points are compared with, and how they are laid over it. */
export function FitPart({ job, set, index }: { job: Job; set: MeasuredSet; index: number }) {
  const app = useApp();
  const plan = useAppState((state) => state.made?.plan ?? null);
  const targets = plan ? measuringTargets(plan) : [];
  const change = (part: Partial<MeasuredSet>, say: string) => {
    const measured = job.inspection.measured.map((one, k) => (k === index ? { ...one, ...part } : one));
    editJob(app, setInspection, { change: { measured }, say });
  };
  const fit = (part: Partial<Fit>, say: string) => change({ fit: { ...set.fit, ...part } }, say);
  return (
    <Part title="Fit">
      <dl className="facts inspect-facts">
        <dt>Measured on</dt>
        <dd>
          <Choice
            label="Measured on"
            value={set.target}
            text={targets.find(({ id }) => id === set.target)?.name ?? 'something that is gone'}
            options={targets.map(({ id, name }) => ({ value: id, name }))}
            onChoose={(target) => change({ target }, `${set.name} measured on ${target}`)}
          />
        </dd>
        <dt>Laid over it by</dt>
        <dd>
          <Choice
            label="Fit"
            value={set.fit.method}
            options={methods}
            onChoose={(method) => fit({ method }, `Fit by ${method}`)}
          />
        </dd>
        <dt>Outliers</dt>
        <dd>
          <Choice
            label="Outliers"
            value={set.fit.outliers}
            options={[
              { value: 'keep', name: 'kept' },
              { value: 'leave out', name: 'left out' },
            ]}
            onChoose={(outliers) => fit({ outliers }, `Outliers: ${outliers}`)}
          />
        </dd>
      </dl>
      {set.fit.method !== 'as measured' && (
        <div className="inspect-ticks" role="group" aria-label="The fit may">
          {freedoms.map(([key, name]) => (
            <label key={key} className="tick">
              <input
                type="checkbox"
                checked={set.fit.freedom[key]}
                onChange={({ target }) =>
                  fit(
                    { freedom: { ...set.fit.freedom, [key]: target.checked } },
                    `Fit may ${name}: ${target.checked ? 'yes' : 'no'}`,
                  )
                }
              />
              {name}
            </label>
          ))}
        </div>
      )}
    </Part>
  );
}
