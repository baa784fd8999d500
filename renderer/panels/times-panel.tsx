import type { Machine } from '../../core/technology';
import { sayMinutes, sayPrice } from '../../core/say-time';
import type { CutTime, CutTimes, MemberTime } from '../../core/wire/cut-times';
import { jobOf } from '../state/app-state';
import { setTechnology } from '../state/edits/set-technology';
import { editJob } from '../state/job-edit';
import { passName } from '../state/pass-name';
import { useApp, useAppState } from '../state/use-app';
import { HourlyPrice } from '../technology/hourly-price';
import { sayWireLength } from './say-wire-length';

/** Minutes of every pass, wire and price, of each member and of the set. */
export function TimesPanel({ times }: { times: CutTimes }) {
  const app = useApp();
  const technology = useAppState((state) => jobOf(state)?.technology ?? null);
  if (!technology) return null;
  const { machine } = technology;
  const count = Math.max(0, ...times.members.map(({ passes }) => passes.length));
  return (
    <>
      <div className="panel-scroll">
        <table className="table table-numbers" aria-label="Cutting times">
          <thead>
            <tr>
              <th scope="col">Member</th>
              {Array.from({ length: count }, (_, pass) => (
                <th key={pass} scope="col">
                  {passName(pass)}
                </th>
              ))}
              <th scope="col">Threadings</th>
              <SumHeadings machine={machine} />
            </tr>
          </thead>
          <tbody>
            {times.members.map((member) => (
              <tr key={member.memberId}>
                <th scope="row">{member.memberId}</th>
                {Array.from({ length: count }, (_, pass) => (
                  <td key={pass}>{minutesOf(member, pass)}</td>
                ))}
                <td>{member.threadings}</td>
                <SumCells time={member} machine={machine} />
              </tr>
            ))}
          </tbody>
          <tfoot>
            <tr>
              <th scope="row" colSpan={count + 2}>
                The set
              </th>
              <SumCells time={times.set} machine={machine} />
            </tr>
          </tfoot>
        </table>
      </div>
      <p>
        One hour of the machine costs{' '}
        <HourlyPrice
          machine={machine}
          onCommit={(hourlyPrice) =>
            editJob(app, setTechnology, {
              technology: { ...technology, machine: { ...machine, hourlyPrice } },
              say: 'Price of an hour',
            })
          }
        />
        .
      </p>
      <p className="panel-note">
        A pass takes its length times the height of the block over its rate; each threading{' '}
        {machine.threadingMinutes} min. Setting up, measuring and waiting at a stop are not counted.
      </p>
    </>
  );
}

function SumHeadings({ machine }: { machine: Machine }) {
  return (
    <>
      <th scope="col">Time</th>
      <th scope="col">Wire</th>
      {machine.hourlyPrice && <th scope="col">Price</th>}
    </>
  );
}

function SumCells({ time, machine: { hourlyPrice } }: { time: CutTime; machine: Machine }) {
  const unit = useAppState((state) => state.unit);
  return (
    <>
      <td>{sayMinutes(time.minutes)}</td>
      <td>{sayWireLength(time.wire, unit)}</td>
      {hourlyPrice && <td>{time.price === null ? '–' : sayPrice(time.price, hourlyPrice)}</td>}
    </>
  );
}

function minutesOf({ passes }: MemberTime, pass: number): string {
  const time = passes.find((one) => one.pass === pass);
  return time ? sayMinutes(time.minutes) : '–';
}
