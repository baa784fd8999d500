import type { DieSetSettings } from '../../core/die-set-settings';
import type { Job } from '../../core/job';
import { Choice } from '../controls/choice';
import { LengthInput } from '../controls/length-input';
import { AngleInput, ShareInput } from '../controls/number-input';
import { setDieSet } from '../state/edits/set-die-set';
import { editJob } from '../state/job-edit';
import { useApp } from '../state/use-app';

type EdgeShear = DieSetSettings['edgeShear'];

/** "Edges flat" or "sloped on the piercing punches by 1 mm along 0°, breaking after 40 % of the thickness". */
export function EdgeShearLine({ job }: { job: Job }) {
  const app = useApp();
  const { edgeShear } = job.dieSet;
  const change = (part: Partial<EdgeShear>, turning = false) =>
    editJob(
      app,
      setDieSet,
      { say: 'Shear on the edges', change: { edgeShear: { ...edgeShear, ...part } } },
      turning,
    );
  return (
    <p className="part-line">
      Edges{' '}
      <Choice<EdgeShear['shear']>
        label="Shear on the edges"
        value={edgeShear.shear}
        options={[
          { value: 'flat', name: 'flat' },
          { value: 'slope', name: 'sloped one way' },
          { value: 'roof', name: 'as a roof', aside: 'no side thrust' },
        ]}
        onChoose={(shear) => change({ shear })}
      />
      {edgeShear.shear !== 'flat' && (
        <>
          {' '}
          on{' '}
          <Choice<EdgeShear['on']>
            label="Shear is ground on"
            value={edgeShear.on}
            options={[
              { value: 'pierce', name: 'the piercing punches' },
              { value: 'blank', name: 'what blanks' },
              { value: 'all', name: 'all of them' },
            ]}
            onChoose={(on) => change({ on })}
          />{' '}
          by{' '}
          <LengthInput
            label="Depth of the shear"
            value={edgeShear.depth}
            onCommit={(depth, turning) => change({ depth }, turning)}
          />{' '}
          along{' '}
          <AngleInput
            label="Direction of the shear"
            value={edgeShear.direction}
            onCommit={(direction, turning) => change({ direction }, turning)}
          />
          , breaking after{' '}
          <ShareInput
            label="Penetration at the break"
            value={edgeShear.penetration}
            onCommit={(penetration, turning) =>
              change({ penetration: Math.min(1, Math.max(0.01, penetration)) }, turning)
            }
          />{' '}
          of the thickness
        </>
      )}
      .
    </p>
  );
}
