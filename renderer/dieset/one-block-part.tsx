import type { ProvedOneBlock } from '../../core/die/die-set';
import { clearanceAfterRegrinds } from '../../core/die/single-block';
import type { Job } from '../../core/job';
import { degrees, formatLength } from '../../core/units';
import { Choice } from '../controls/choice';
import { Part } from '../drawing/part';
import { setDieSet } from '../state/edits/set-die-set';
import { editJob } from '../state/job-edit';
import { useApp, useAppState } from '../state/use-app';
import { Fact, Facts } from './fact';
import { MoreRows, mostRows } from './more-rows';

/** Punch and die out of one block with a tilted wire: the angle, and how true the clearance comes out. */
export function OneBlockPart({ job, blocks }: { job: Job; blocks: readonly ProvedOneBlock[] }) {
  const app = useApp();
  const unit = useAppState((state) => state.unit);
  const say = (mm: number) => formatLength(mm, unit);
  const isOn = job.dieSet.oneBlock;
  return (
    <Part title="One block, one cut">
      <p className="part-line">
        Punch and die are cut from{' '}
        <Choice<'own' | 'one'>
          label="Blocks of punch and die"
          value={isOn ? 'one' : 'own'}
          text={isOn ? 'one block with a tilted wire' : 'blocks of their own'}
          options={[
            { value: 'own', name: 'blocks of their own' },
            { value: 'one', name: 'one block with a tilted wire' },
          ]}
          onChoose={(chosen) =>
            editJob(app, setDieSet, {
              say: chosen === 'one' ? 'Punch and die from one block' : 'Blocks of their own',
              change: { oneBlock: chosen === 'one' },
            })
          }
        />
        .
      </p>
      {isOn && (
        <p className="panel-note">
          One leaning pass with the rough cut’s gap, U and V in the program; the start hole lies on the cut,
          eroded along the leaning wire. Relief, skims and a compound tool’s common block do not apply.
        </p>
      )}
      {blocks[0] && <Lean block={blocks[0]} />}
      {blocks.length > 0 && (
        <table className="table table-numbers">
          <caption>Clearance proved: the true distance of both edges</caption>
          <thead>
            <tr>
              <th scope="col">Contour</th>
              <th scope="col">Least</th>
              <th scope="col">Greatest</th>
            </tr>
          </thead>
          <tbody>
            {blocks.slice(0, mostRows).map(({ contourId, least, greatest }) => (
              <tr key={contourId}>
                <th scope="row">{contourId}</th>
                <td>{say(least)}</td>
                <td>{say(greatest)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
      <MoreRows count={blocks.length} />
    </Part>
  );
}

/** Kerf, height and clearance are the job's, and so is the lean of all contours. */
function Lean({ block: { kerf, height, clearance, solved } }: { block: ProvedOneBlock }) {
  const unit = useAppState((state) => state.unit);
  const say = (mm: number) => formatLength(mm, unit);
  return (
    <Facts label="One block">
      <Fact label="Tilt of the wire" source="h sin θ + c cos θ = K, exact geometry">
        {degrees(solved.tilt).toFixed(5)}°
      </Fact>
      <Fact label="From" source="kerf, block height, clearance per side">
        {say(kerf)}, {say(height)}, {say(clearance)}
      </Fact>
      <Fact label="Wire leans out by" source="h tan θ, from the die’s edge to the punch’s">
        {say(solved.drift)}
      </Fact>
      <Fact label="0.1 mm off both faces opens it by" source="(g + g) tan θ">
        {say(clearanceAfterRegrinds(0, 0.1, 0.1, solved.tilt))}
      </Fact>
      <Fact label="0.01° more takes" source="dc/dθ">
        {say(-solved.perHundredthDegree)}
      </Fact>
      <Fact label="0.01 mm more gap gives" source="dc/dK">
        {say(solved.perHundredthGap)}
      </Fact>
    </Facts>
  );
}
