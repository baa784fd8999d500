import type { ToolSheet } from '../../core/die/die-set';
import { dullShare, pressMargin } from '../../core/die/die-rules';
import type { ForceSheet } from '../../core/die/force-sheet';
import { saySource } from '../../core/die/sourced';
import { strippingSource } from '../../core/die/stripping-force';
import type { DieSetSettings } from '../../core/die-set-settings';
import type { Job } from '../../core/job';
import { formatQuantity } from '../../core/quantities';
import { formatLength, formatLengthNumber } from '../../core/units';
import { Choice } from '../controls/choice';
import { ShareInput } from '../controls/number-input';
import { QuantityInput } from '../controls/quantity-input';
import { Part } from '../drawing/part';
import { setDieSet } from '../state/edits/set-die-set';
import { editJob } from '../state/job-edit';
import { useApp, useAppState } from '../state/use-app';
import { EdgeShearLine } from './edge-shear-line';
import { Fact, Facts } from './fact';
import { MoreRows, mostRows } from './more-rows';
import { SpringsLine } from './springs-line';

/** Force of one stroke of a tool, its press, springs and centre of pressure. */
export function ForcePart({ sheet }: { sheet: ToolSheet }) {
  const { tool, force, cuts } = sheet;
  const unit = useAppState((state) => state.unit);
  const say = (newton: number) => formatQuantity(newton, 'force', unit);
  return (
    <Part title={`Force: ${tool.name}`} {...(force ? { aside: say(force.needed) } : {})}>
      {force ? (
        <ForceFacts force={force} />
      ) : (
        <p className="panel-note">The stock has neither shear nor tensile strength in the table.</p>
      )}
      {cuts.length > 0 && (
        <table className="table table-numbers">
          <caption>Both published forms, sharp edges</caption>
          <thead>
            <tr>
              <th scope="col">Cut</th>
              <th scope="col">Length</th>
              <th scope="col">L t τ</th>
              <th scope="col">0.7 t L UTS</th>
            </tr>
          </thead>
          <tbody>
            {cuts.slice(0, mostRows).map(({ contourId, use, length, byShear, byTensile }) => (
              <tr key={contourId}>
                <th scope="row">
                  {use} {contourId}
                </th>
                <td>{formatLength(length, unit)}</td>
                <td>{byShear === null ? '–' : say(byShear)}</td>
                <td>{byTensile === null ? '–' : say(byTensile)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
      <MoreRows count={cuts.length} />
      <p className="caution-line">
        Starting values: the responsible tool engineer settles them. Guarding and set-up by trained people
        under the local code (in the USA 29 CFR 1910.217).
      </p>
    </Part>
  );
}

function ForceFacts({ force }: { force: ForceSheet }) {
  const unit = useAppState((state) => state.unit);
  const say = (newton: number) => formatQuantity(newton, 'force', unit);
  const { cutting, sheared, dull, strippingFrom, strippingTo, stroke, needed, rating, centre, ejecting } =
    force;
  return (
    <Facts label="Force">
      <Fact
        label="Cut, sharp edges"
        source="F = L t τ (Groover, chapter 20) or 0.7 t L UTS (Kalpakjian & Schmid, eq. 16.1)"
      >
        {say(cutting)}
      </Fact>
      {sheared < cutting && (
        <Fact
          label="With shear on the edge"
          source="the greatest length that cuts at one time, exact geometry"
        >
          {say(sheared)}
        </Fact>
      )}
      <Fact label="With dull edges" source={`15 to 30 % on top: ${saySource(dullShare)}`}>
        {say(dull)}
      </Fact>
      <Fact label="Stripping" source={`${strippingSource}: 3–5 % for wide holes, 10–20 % for narrow ones`}>
        {say(strippingFrom)} to {say(strippingTo)}
      </Fact>
      {ejecting > 0 && (
        <Fact label="Knockout" source="as much as strips a hole of the piece’s width (common practice)">
          {say(ejecting)}
        </Fact>
      )}
      {force.springs && (
        <Fact label="Stripper springs" isBad={force.springs.overrun > 0}>
          {force.springs.count}, preloaded by {formatLength(force.springs.preload, unit)},{' '}
          {say(force.springs.closedForce)} closed
        </Fact>
      )}
      {force.ejectors && (
        <Fact label="Knockout springs" isBad={force.ejectors.overrun > 0}>
          {force.ejectors.count}, preloaded by {formatLength(force.ejectors.preload, unit)},{' '}
          {say(force.ejectors.closedForce)} closed
        </Fact>
      )}
      <Fact label="Stroke">{say(stroke)}</Fact>
      <Fact
        label="Press rating wanted"
        source={`20 to 30 % over the stroke: ${saySource(pressMargin)}`}
        isBad={rating !== null && rating < needed}
      >
        {say(needed)}
      </Fact>
      {centre && (
        <Fact
          label="Centre of pressure"
          source="centroid of all cut lengths; set it under the middle of the ram"
        >
          x {formatLengthNumber(centre.x, unit)} y {formatLength(centre.y, unit)}
        </Fact>
      )}
    </Facts>
  );
}

type Force = DieSetSettings['force'];

/** What every tool's force goes by: strength, dull edges, press, shear on the edges, stripping and knockout. */
export function StrokePart({ job }: { job: Job }) {
  const app = useApp();
  const { force } = job.dieSet;
  const change = (part: Partial<Force>, say: string, turning = false) =>
    editJob(app, setDieSet, { say, change: { force: { ...force, ...part } } }, turning);
  return (
    <Part title="Stroke">
      <p className="part-line">
        Force by{' '}
        <Choice<Force['by']>
          label="Force by"
          value={force.by}
          options={[
            { value: 'shear strength', name: 'shear strength', aside: 'L t τ' },
            { value: 'tensile strength', name: 'tensile strength', aside: '0.7 t L UTS' },
          ]}
          onChoose={(by) => change({ by }, `Force by ${by}`)}
        />
        , dull edges add{' '}
        <ShareInput
          label="Dull edges add"
          value={force.dull}
          onCommit={(dull, turning) => change({ dull }, 'Dull edges', turning)}
        />
        , margin{' '}
        <ShareInput
          label="Margin of the press"
          value={force.margin}
          onCommit={(margin, turning) => change({ margin }, 'Margin of the press', turning)}
        />
        ; press rated{' '}
        <QuantityInput
          label="Rating of the press"
          quantity="force"
          value={force.rating}
          onCommit={(rating, turning) => change({ rating }, 'Rating of the press', turning)}
        />
        .
      </p>
      <EdgeShearLine job={job} />
      <SpringsLine job={job} />
    </Part>
  );
}
