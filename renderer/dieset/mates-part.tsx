import { fitAllowance } from '../../core/die/fit-allowance';
import { fitOnSize, sizeOf } from '../../core/fit-on-size';
import type { Job } from '../../core/job';
import type { Plan } from '../../core/plan';
import { formatLength } from '../../core/units';
import { Part } from '../drawing/part';
import { setPlugFit } from '../state/edits/set-plug-fit';
import { editJob } from '../state/job-edit';
import { useApp, useAppState } from '../state/use-app';
import { Fact, Facts } from './fact';
import { FitValue } from './fit-value';
import { MoreRows, mostRows } from './more-rows';

/** Every contour that is used as a plug and its hole, with its fit. */
export function MatesPart({ job, plan }: { job: Job; plan: Plan }) {
  const app = useApp();
  const unit = useAppState((state) => state.unit);
  const say = (mm: number) => formatLength(mm, unit);
  const mates = plan.pairs.filter(({ use }) => use === 'mate');
  if (mates.length === 0) return null;
  return (
    <Part title="Plugs and holes" aside={`${mates.length}`}>
      {mates.slice(0, mostRows).map(({ contourId, fit: asCut }) => {
        const fit = job.dieSet.plugFits[contourId] ?? job.dieSet.plugFit;
        const drawn = plan.drawing.contours.find(({ id }) => id === contourId);
        const size = drawn ? sizeOf([drawn.contour]) : 1;
        const allowed = fitAllowance(fitOnSize(fit, size), 'hole');
        return (
          <div key={contourId}>
            <p className="part-line">
              {contourId}: the hole is larger than the plug by{' '}
              <FitValue
                of={contourId}
                fit={fit}
                size={size}
                onChange={(next, turning = false) =>
                  editJob(app, setPlugFit, { contourId, fit: next }, turning)
                }
              />
              .
            </p>
            {allowed.ok && (
              <Facts label={`Fit of ${contourId}`}>
                <Fact label="Gap per side" source={allowed.value.reason}>
                  {say(allowed.value.gap)}
                </Fact>
                <Fact label="Kind" source="at the ends of the limits">
                  {allowed.value.kind} fit, {say(allowed.value.leastGap)} to {say(allowed.value.greatestGap)}
                </Fact>
                <Fact label="As cut" source="exact distance, plug in hole">
                  {asCut ? `${say(asCut.least)} to ${say(asCut.greatest)}` : '–'}
                </Fact>
              </Facts>
            )}
          </div>
        );
      })}
      <MoreRows count={mates.length} />
    </Part>
  );
}
