import { passesOf, type Job } from '../../core/job';
import { offsetWord } from '../../core/output/offset-word';
import type { PartName } from '../../core/plan';
import { formatLength } from '../../core/units';
import { passName } from '../state/pass-name';

/** Where the wire's centre runs in each pass, and the entry of the control's table that a program names for it. */
export function OffsetTable({ job, part }: { job: Job; part: PartName }) {
  return (
    <table className="table">
      <caption>Offsets: half the wire, the spark gap and the stock left</caption>
      <thead>
        <tr>
          <th scope="col">Pass</th>
          <th scope="col">Register</th>
          <th scope="col">mm</th>
          <th scope="col">inch</th>
        </tr>
      </thead>
      <tbody>
        {passesOf(job, part).map(({ sparkGap, stockLeft }, index) => {
          const offset = job.wire.diameter / 2 + sparkGap + stockLeft;
          return (
            <tr key={index}>
              <th scope="row">{passName(index)}</th>
              <td>{offsetWord(job.output.style.offsets, index + 1)}</td>
              <td>{formatLength(offset, 'mm')}</td>
              <td>{formatLength(offset, 'inch')}</td>
            </tr>
          );
        })}
      </tbody>
    </table>
  );
}
