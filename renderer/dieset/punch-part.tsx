import { endConditions } from '../../core/die/punch-strength';
import type { PunchSheet } from '../../core/die/punch-sheet';
import { punchSafety, widthsLookedAt } from '../../core/die/die-rules';
import { saySource } from '../../core/die/sourced';
import type { DieSetSettings } from '../../core/die-set-settings';
import type { Job } from '../../core/job';
import { formatQuantity } from '../../core/quantities';
import { shortNumber } from '../../core/say';
import { formatLength } from '../../core/units';
import { Choice } from '../controls/choice';
import { LengthInput } from '../controls/length-input';
import { QuantityInput } from '../controls/quantity-input';
import { Part } from '../drawing/part';
import { setDieSet } from '../state/edits/set-die-set';
import { editJob } from '../state/job-edit';
import { hoverTarget } from '../state/select-target';
import { useApp, useAppState } from '../state/use-app';
import { MoreRows, mostRows } from './more-rows';

type Punch = DieSetSettings['punch'];

const ends: Readonly<Record<Punch['end'], string>> = {
  free: 'free at the tip',
  guided: 'guided near the tip by the stripper',
  hinged: 'as if hinged at both ends',
};

/** Whether the punches stand their force: stress, buckling, and their narrowest places. */
export function PunchPart({ job, punches }: { job: Job; punches: readonly PunchSheet[] }) {
  const app = useApp();
  const unit = useAppState((state) => state.unit);
  const { punch } = job.dieSet;
  const change = (part: Partial<Punch>, say: string, turning = false) =>
    editJob(app, setDieSet, { say, change: { punch: { ...punch, ...part } } }, turning);
  return (
    <Part title="Punches" aside={`${punches.length}`}>
      <p className="part-line">
        They stand{' '}
        <LengthInput
          label="Free length of the punches"
          value={punch.freeLength}
          onCommit={(freeLength, turning) => change({ freeLength }, 'Free length of the punches', turning)}
        />{' '}
        from the retainer,{' '}
        <Choice<Punch['end']>
          label="End of the punches"
          value={punch.end}
          text={ends[punch.end]}
          options={endConditions.map((value) => ({ value, name: ends[value] }))}
          onChoose={(end) => change({ end }, `Punches ${ends[end]}`)}
        />
        , and stand{' '}
        <QuantityInput
          label="Permitted stress"
          quantity="stress"
          value={punch.permittedStress}
          onCommit={(permittedStress, turning) => change({ permittedStress }, 'Permitted stress', turning)}
        />{' '}
        of pressure.
      </p>
      <table className="table table-numbers" aria-label="Punches under load">
        <thead>
          <tr>
            <th scope="col">Punch</th>
            <th scope="col">Narrowest</th>
            <th scope="col">Slenderness</th>
            <th scope="col">Buckles at</th>
            <th scope="col">Times its force</th>
          </tr>
        </thead>
        <tbody>
          {punches.slice(0, mostRows).map(({ memberId, contourId, narrowest, strength }) => (
            <tr
              key={memberId}
              data-bad={(strength !== null && strength.safety < punchSafety.value) || undefined}
              onPointerEnter={() => hoverTarget(app, { kind: 'member', id: memberId })}
              onPointerLeave={() => hoverTarget(app, null)}
            >
              <th scope="row">{contourId}</th>
              <td>
                {narrowest
                  ? formatLength(narrowest.width, unit)
                  : `over ${formatLength(widthsLookedAt * job.stock.thickness, unit)}`}
              </td>
              <td>{strength ? shortNumber(strength.slenderness) : '–'}</td>
              <td>{strength ? formatQuantity(strength.bucklingLoad, 'force', unit) : '–'}</td>
              <td>{strength ? `${shortNumber(strength.safety)} (${strength.limit})` : '–'}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <MoreRows count={punches.length} />
      <p className="panel-note">
        Euler’s load with the least second moment of the section; {punchSafety.value} times the force is
        wanted ({saySource(punchSafety)}).
      </p>
    </Part>
  );
}
