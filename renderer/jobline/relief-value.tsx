import { largestAngleDeg, readReliefAngle, type ReliefSettings } from '../../core/die/relief-rules';
import type { Job } from '../../core/job';
import { Choice } from '../controls/choice';
import { LengthInput } from '../controls/length-input';
import { PanelValue } from '../controls/panel-value';
import { ValueInput } from '../controls/value-input';
import { ReliefPanel } from '../panels/relief-panel';
import { setRelief, type ReliefChange } from '../state/edits/set-relief';
import { editJob } from '../state/job-edit';
import { useApp } from '../state/use-app';

/** "relief 0.5° below a 3 mm land, conical corners;" or "no relief;" */
export function ReliefValue({ job }: { job: Job }) {
  const app = useApp();
  const { relief } = job;
  const change = (part: ReliefChange, turning = false) => editJob(app, setRelief, part, turning);
  const kind = (
    <Choice<ReliefSettings['kind']>
      label="Die relief"
      value={relief.kind}
      text={kindWords[relief.kind]}
      options={[
        { value: 'none', name: 'no relief', aside: 'straight through the die' },
        { value: 'land and relief', name: 'relief below a land', aside: 'two cuts' },
        { value: 'one tapered cut', name: 'taper from the cutting edge', aside: 'one cut' },
      ]}
      onChoose={(chosen) => change({ kind: chosen })}
    />
  );
  if (relief.kind === 'none') return <span className="glued">{kind};</span>;
  return (
    <>
      {kind}{' '}
      <ValueInput<number>
        label="Relief angle"
        text={`${relief.angleDeg}°`}
        read={readReliefAngle}
        onCommit={(angleDeg, turning) => change({ angleDeg }, turning)}
        stepped={(by) => turned(relief.angleDeg, by)}
      />{' '}
      {relief.kind === 'land and relief' ? (
        <>
          below a{' '}
          <LengthInput
            label="Land height"
            value={relief.land}
            onCommit={(land, turning) => change({ land }, turning)}
          />{' '}
          land,{' '}
        </>
      ) : (
        <>from the cutting edge, </>
      )}
      <span className="glued">
        <PanelValue label="All about the relief" text={cornerWords[relief.corners]} title="Relief of the die">
          <ReliefPanel job={job} />
        </PanelValue>
        ;
      </span>
    </>
  );
}

const kindWords: Readonly<Record<ReliefSettings['kind'], string>> = {
  none: 'no relief',
  'land and relief': 'relief',
  'one tapered cut': 'taper',
};

const cornerWords: Readonly<Record<ReliefSettings['corners'], string>> = {
  conical: 'conical corners',
  'constant radius': 'corners of constant radius',
};

/** One step of a tenth of a degree, of a hundredth below that. */
function turned(angle: number, by: 1 | -1): number | null {
  const step = angle < 0.1 || (angle === 0.1 && by < 0) ? 0.01 : 0.1;
  const next = Number((Math.round(angle / step) * step + by * step).toFixed(6));
  return next > 0 && next <= largestAngleDeg ? next : null;
}
