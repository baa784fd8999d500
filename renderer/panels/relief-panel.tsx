import type { ReliefSettings } from '../../core/die/relief-rules';
import { exitEnlargement, growthPerGrind, regrindsLeft } from '../../core/die/regrinds';
import type { Job } from '../../core/job';
import { tolerance } from '../../core/geometry/tolerance';
import type { Relief } from '../../core/plan';
import { sayAngle } from '../../core/say';
import { formatLength } from '../../core/units';
import { Choice } from '../controls/choice';
import { LengthInput } from '../controls/length-input';
import { setRelief, type ReliefChange } from '../state/edits/set-relief';
import { editJob } from '../state/job-edit';
import { useApp, useAppState } from '../state/use-app';

/** How the relief's corners go, what the control is given, and what comes of it at the exit face and after regrinds. */
export function ReliefPanel({ job }: { job: Job }) {
  const app = useApp();
  const { relief } = job;
  const change = (part: ReliefChange, turning = false) => editJob(app, setRelief, part, turning);
  return (
    <>
      <table className="table" aria-label="Relief">
        <tbody>
          <tr>
            <th scope="row">Corners</th>
            <td>
              <Choice<ReliefSettings['corners']>
                label="Corners of the relief"
                value={relief.corners}
                options={[
                  { value: 'conical', name: 'conical', aside: 'radii grow, the angle stays' },
                  {
                    value: 'constant radius',
                    name: 'of constant radius',
                    aside: 'the wire leans more there',
                  },
                ]}
                onChoose={(corners) => change({ corners })}
              />
            </td>
          </tr>
          <tr>
            <th scope="row">Cones in the program</th>
            <td>
              <Choice<ReliefSettings['arcs']>
                label="Cones in the program"
                value={relief.arcs}
                options={[
                  { value: 'chords', name: 'as chords', aside: 'for any control with U and V' },
                  {
                    value: 'circular',
                    name: 'as arcs',
                    aside: 'where the control runs two arcs about one centre',
                  },
                ]}
                onChoose={(arcs) => change({ arcs })}
              />
              {', '}
              <LengthInput
                label="Chords within"
                value={relief.chordTolerance}
                onCommit={(chordTolerance, turning) => change({ chordTolerance }, turning)}
              />{' '}
              off
            </td>
          </tr>
          <tr>
            <th scope="row">A regrind takes</th>
            <td>
              <LengthInput
                label="Regrind"
                value={relief.perGrind}
                onCommit={(perGrind, turning) => change({ perGrind }, turning)}
              />
            </td>
          </tr>
        </tbody>
      </table>
      <Outcome job={job} />
    </>
  );
}

function Outcome({ job }: { job: Job }) {
  const unit = useAppState((state) => state.unit);
  const reliefs = useAppState((state) => state.made?.plan.pairs ?? none).flatMap(
    ({ die }) => die.relief ?? [],
  );
  const [first] = reliefs;
  if (!first) return <p className="panel-note">No die has this relief: see the review list.</p>;
  const { land, height, angle } = first;
  const length = (mm: number) => formatLength(mm, unit);
  const lean = Math.max(...reliefs.map(({ greatestLean }) => greatestLean));
  const { perGrind } = job.relief;
  return (
    <dl className="facts">
      <dt>Exit face, {length(height)} down</dt>
      <dd>{length(exitEnlargement(height, { land, relief: angle }))} larger on each side</dd>
      <dt>Each regrind{land > 0 ? ' past the land' : ''}</dt>
      <dd>{length(growthPerGrind(perGrind, angle))} larger on each side</dd>
      <dt>The land lasts</dt>
      <dd>
        {land > 0 ? `${regrindsLeft({ land, relief: angle }, perGrind, height, 0)} regrinds` : 'not at all'}
      </dd>
      <dt>The wire leans</dt>
      <dd>
        up to {sayAngle(lean)}, the machine goes to {job.technology.machine.largestTaperDeg}°
      </dd>
      {first.planes.map(({ depth }, k) => (
        <Plane key={depth} depth={depth} reliefs={reliefs} plane={k} />
      ))}
      <dt>Allowed beside the wanted wall</dt>
      <dd>{length(tolerance.ruledSurface)}, more is asked about</dd>
    </dl>
  );
}

/** How true the cut surface is in one plane, the worst of all openings. */
function Plane({ depth, reliefs, plane }: { depth: number; reliefs: readonly Relief[]; plane: number }) {
  const unit = useAppState((state) => state.unit);
  const own = reliefs.flatMap(({ planes }) => planes[plane] ?? []);
  const gouge = Math.max(...own.map((one) => one.gouge));
  const left = Math.max(...own.map(({ remainder }) => remainder));
  return (
    <>
      <dt>Surface {formatLength(depth, unit)} down</dt>
      <dd>
        at most {formatLength(gouge, unit)} too deep, {formatLength(left, unit)} left
      </dd>
    </>
  );
}

const none: readonly never[] = [];
