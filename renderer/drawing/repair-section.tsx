import {
  repairKinds,
  repairSwitches,
  type Drawing,
  type Repair,
  type RepairKind,
  type RepairSwitch,
} from '../../core/drawing/drawing';
import type { Job } from '../../core/job';
import { formatLength } from '../../core/units';
import { switchRepair } from '../state/edits/switch-repair';
import { editJob } from '../state/job-edit';
import { repairNames, repairWays } from '../state/repair-names';
import { hoverTarget, selectTarget } from '../state/select-target';
import { sameTarget, targetOfRepair } from '../state/target';
import { useApp, useAppState } from '../state/use-app';
import { Part } from './part';

/** Longer lists say no more than their largest. */
const mostListed = 60;

/** What was put right in the drawing: each kind to be switched, each repair to be looked at in the picture. */
export function RepairSection({ job, drawing }: { job: Job; drawing: Drawing | null }) {
  const repairs = drawing?.repairs ?? [];
  return (
    <Part title="Repairs" aside={`${repairs.length} made`}>
      <ul className="plain-rows">
        {repairKinds.map((kind) => (
          <KindRow
            key={kind}
            kind={kind}
            isOn={!job.drawing.repairsOff.includes(kind as RepairSwitch)}
            repairs={repairs.filter((repair) => repair.kind === kind)}
          />
        ))}
      </ul>
    </Part>
  );
}

interface KindRowProps {
  readonly kind: RepairKind;
  readonly isOn: boolean;
  readonly repairs: readonly Repair[];
}

function KindRow({ kind, isOn, repairs }: KindRowProps) {
  const app = useApp();
  const unit = useAppState((state) => state.unit);
  const bySize = [...repairs].sort((a, b) => b.size - a.size);
  const [largest] = bySize;
  const canSwitch = isSwitch(kind);
  return (
    <li
      className="repair-kind"
      onPointerEnter={() => hoverTarget(app, { kind: 'repairs', repair: kind })}
      onPointerLeave={() => hoverTarget(app, null)}
    >
      <div className="plain-row">
        <label className="tick">
          <input
            type="checkbox"
            aria-label={`Put right: ${repairNames[kind]}`}
            checked={isOn}
            disabled={!canSwitch}
            onChange={() => canSwitch && editJob(app, switchRepair, { kind, isOn: !isOn })}
          />
          {repairNames[kind]}
        </label>
        <span className="panel-note">{isOn ? repairWays[kind] : 'left as drawn'}</span>
        <span className="count">{repairs.length}</span>
      </div>
      {largest && (
        <details className="repair-list">
          <summary>Places{largest.size > 0 && `, the largest ${formatLength(largest.size, unit)}`}</summary>
          <ol>
            {bySize.slice(0, mostListed).map((repair) => (
              <RepairPlace key={`${repair.place.x}/${repair.place.y}/${repair.size}`} repair={repair} />
            ))}
          </ol>
          {bySize.length > mostListed && (
            <p className="panel-note">And {bySize.length - mostListed} smaller ones.</p>
          )}
        </details>
      )}
    </li>
  );
}

const isSwitch = (kind: RepairKind): kind is RepairSwitch =>
  (repairSwitches as readonly RepairKind[]).includes(kind);

function RepairPlace({ repair }: { repair: Repair }) {
  const app = useApp();
  const unit = useAppState((state) => state.unit);
  const target = targetOfRepair(repair);
  const isSelected = useAppState((state) => sameTarget(state.selected, target));
  const { x, y } = repair.place;
  const mark = () => hoverTarget(app, target);
  const unmark = () => hoverTarget(app, null);
  return (
    <li>
      <button
        type="button"
        className="link place-link"
        aria-current={isSelected}
        onPointerEnter={mark}
        onPointerLeave={unmark}
        onFocus={mark}
        onBlur={unmark}
        onClick={() => selectTarget(app, target, true)}
      >
        <span>{repair.size > 0 ? formatLength(repair.size, unit) : 'a point'}</span>
        <span className="panel-note">
          at x {formatLength(x, unit)}, y {formatLength(y, unit)}
        </span>
      </button>
    </li>
  );
}
