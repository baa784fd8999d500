import type { PlateSettings } from '../../core/die-set-settings';
import { sizeOf } from '../../core/fit-on-size';
import type { Job } from '../../core/job';
import type { Pair, PlateName } from '../../core/plan';
import { formatLength } from '../../core/units';
import { Choice } from '../controls/choice';
import { LengthInput } from '../controls/length-input';
import { Part } from '../drawing/part';
import { setPlate } from '../state/edits/set-plate';
import { editJob } from '../state/job-edit';
import { hoverTarget } from '../state/select-target';
import { useApp, useAppState } from '../state/use-app';
import { FitValue } from './fit-value';
import { MoreRows, mostRows } from './more-rows';

const plates: readonly PlateName[] = ['stripper', 'retainer'];
const titles: Readonly<Record<PlateName, string>> = { stripper: 'Stripper', retainer: 'Punch retainer' };
const wants: Readonly<Record<PlateName, string>> = {
  stripper: 'The punches run freely in it.',
  retainer: 'It holds the punches: a slip fit, or less than zero where it presses.',
};

/** The plates that the punches go through: whether they are made, their fit, corners and height. */
export function PlatesPart({ job, pairs }: { job: Job; pairs: readonly Pair[] }) {
  return (
    <>
      {plates.map((plate) => (
        <PlatePart key={plate} job={job} plate={plate} pairs={pairs} />
      ))}
    </>
  );
}

function PlatePart({ job, plate, pairs }: { job: Job; plate: PlateName; pairs: readonly Pair[] }) {
  const app = useApp();
  const settings = job.dieSet[plate];
  const { make, fit, corners, height } = settings;
  const change = (part: Partial<PlateSettings>, turning = false) =>
    editJob(app, setPlate, { plate, change: part }, turning);
  const [first] = pairs.flatMap(({ punch }) => (punch.designed.length > 0 ? [punch.designed] : []));
  return (
    <Part title={titles[plate]} aside={make ? 'made' : 'not made'}>
      <p className="part-line">
        It is{' '}
        <Choice<'made' | 'not'>
          label={`Whether the ${plate} is made`}
          value={make ? 'made' : 'not'}
          options={[
            { value: 'made', name: 'cut with its own program' },
            { value: 'not', name: 'not made here' },
          ]}
          onChoose={(chosen) => change({ make: chosen === 'made' })}
        />
        {make && (
          <>
            , larger than the punches by{' '}
            <FitValue
              of={`the ${plate}`}
              fit={fit}
              size={first ? sizeOf(first) : 1}
              onChange={(next, turning) => change({ fit: next }, turning)}
            />
            ; corners{' '}
            <Choice<PlateSettings['corners']>
              label={`Corners of the ${plate}`}
              value={corners}
              text={
                corners === 'relieved' ? 'relieved where the wire leaves a fillet' : 'as the punch has them'
              }
              options={[
                {
                  value: 'relieved',
                  name: 'relieved',
                  aside: 'a round pocket where the wire leaves a fillet',
                },
                { value: 'as the punch', name: 'as the punch has them' },
              ]}
              onChoose={(chosen) => change({ corners: chosen })}
            />
            ;{' '}
            <LengthInput
              label={`Height of the ${plate}`}
              value={height}
              onCommit={(mm, turning) => change({ height: mm }, turning)}
            />{' '}
            high
          </>
        )}
        .
      </p>
      {make && <Openings plate={plate} pairs={pairs} />}
    </Part>
  );
}

function Openings({ plate, pairs }: { plate: PlateName; pairs: readonly Pair[] }) {
  const app = useApp();
  const unit = useAppState((state) => state.unit);
  const rows = pairs.flatMap((pair) =>
    pair.plates.filter(({ member }) => member.part === plate).map((opening) => ({ pair, opening })),
  );
  return (
    <>
      <table className="table table-numbers" aria-label={`Holes of the ${plate}`}>
        <thead>
          <tr>
            <th scope="col">Opening</th>
            <th scope="col">Gap per side</th>
            <th scope="col">Least as cut</th>
          </tr>
        </thead>
        <tbody>
          {rows.slice(0, mostRows).map(({ pair, opening: { member, gap, fit } }) => (
            <tr
              key={member.id}
              onPointerEnter={() => hoverTarget(app, { kind: 'member', id: member.id })}
              onPointerLeave={() => hoverTarget(app, null)}
            >
              <th scope="row">{pair.contourId}</th>
              <td>{formatLength(gap, unit)}</td>
              <td>{fit ? formatLength(fit.least, unit) : '–'}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <MoreRows count={rows.length} />
      <p className="panel-note">
        {wants[plate]} {rows.length === 1 && rows[0] && `Fit: ${rows[0].opening.reason}.`}
      </p>
    </>
  );
}
