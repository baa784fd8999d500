import type { SetupSettings } from '../../core/cut-settings';
import type { Job } from '../../core/job';
import { workRows } from '../../core/output/work-rows';
import type { Block, Plan } from '../../core/plan';
import { formatLength } from '../../core/units';
import { Choice } from '../controls/choice';
import { CoordinateInput } from '../controls/coordinate-input';
import { LengthInput } from '../controls/length-input';
import { setSetup, type SetupChange } from '../state/edits/set-setup';
import { editJob } from '../state/job-edit';
import { useApp, useAppState } from '../state/use-app';

/** The blocks in the machine, and what happens in each, step by step. */
export function BlocksPanel({ job }: { job: Job }) {
  const app = useApp();
  const plan = useAppState((state) => state.made?.plan ?? null);
  const { setup } = job;
  const change = (part: SetupChange, turning = false) => editJob(app, setSetup, part, turning);
  return (
    <>
      <table className="table" aria-label="Blocks">
        <tbody>
          <tr>
            <th scope="row">Dies</th>
            <td>
              <Choice
                label="Blocks of the dies"
                value={setup.dies}
                text={dieNames[setup.dies]}
                options={(Object.keys(dieNames) as (keyof typeof dieNames)[]).map((value) => ({
                  value,
                  name: dieNames[value],
                }))}
                onChoose={(dies) => change({ dies })}
              />
            </td>
          </tr>
          <tr>
            <th scope="row">Punches</th>
            <td>
              <Choice
                label="Blocks of the punches"
                value={setup.punches}
                options={[
                  { value: 'apart', name: 'each from a block of its own' },
                  { value: 'together', name: 'from one block' },
                ]}
                onChoose={(punches) => change({ punches })}
              />
            </td>
          </tr>
          <tr>
            <th scope="row">Order</th>
            <td>
              <Choice
                label="Order of work"
                value={setup.sequence}
                options={[
                  { value: 'part by part', name: 'part by part' },
                  { value: 'roughing first', name: 'what runs unattended first' },
                ]}
                onChoose={(sequence) => change({ sequence })}
              />
            </td>
          </tr>
          <tr>
            <th scope="row">Frame, at least</th>
            <td>
              <LengthInput
                label="Frame of the blocks"
                value={setup.frame}
                mayBeZero
                onCommit={(frame, turning) => change({ frame }, turning)}
              />
            </td>
          </tr>
          <Clamps clamps={setup.clamps} onChange={(clamps, turning) => change({ clamps }, turning)} />
        </tbody>
      </table>
      {plan && (
        <div className="panel-scroll">
          {plan.blocks.map((block) => (
            <BlockTable key={block.id} plan={plan} block={block} setup={setup} onChange={change} />
          ))}
        </div>
      )}
    </>
  );
}

const dieNames: Readonly<Record<SetupSettings['dies'], string>> = {
  together: 'those beside one another from one block',
  'one block': 'all from one block, inner ones first',
  apart: 'each from a block of its own',
};

const sides = ['left', 'right', 'bottom', 'top'] as const;

function Clamps({
  clamps,
  onChange,
}: {
  clamps: SetupSettings['clamps'];
  onChange: (clamps: SetupSettings['clamps'], turning: boolean) => void;
}) {
  return sides.map((side) => (
    <tr key={side}>
      <th scope="row">Clamps, {side}</th>
      <td>
        <LengthInput
          label={`Clamp zone, ${side}`}
          value={clamps[side]}
          mayBeZero
          onCommit={(width, turning) => onChange({ ...clamps, [side]: width }, turning)}
        />
      </td>
    </tr>
  ));
}

interface BlockTableProps {
  readonly plan: Plan;
  readonly block: Block;
  readonly setup: SetupSettings;
  readonly onChange: (change: SetupChange, turning?: boolean) => void;
}

/** How large a block is, and its order of work. */
function BlockTable({ plan, block, setup, onChange }: BlockTableProps) {
  const unit = useAppState((state) => state.unit);
  const { id, outline, travel } = block;
  const size = `${formatLength(outline.maxX - outline.minX, unit)} × ${formatLength(outline.maxY - outline.minY, unit)}`;
  const { [id]: typed, ...others } = setup.outlines;
  const edge = (side: keyof Block['outline'], label: string) => (
    <CoordinateInput
      label={`${label} of block ${id}`}
      value={outline[side]}
      onCommit={(mm, turning) =>
        onChange({ outlines: { ...others, [id]: { ...outline, [side]: mm } } }, turning)
      }
    />
  );
  return (
    <>
      <p className="panel-note">
        Block {id} from x {edge('minX', 'Left edge')} to {edge('maxX', 'Right edge')}, y{' '}
        {edge('minY', 'Lower edge')} to {edge('maxY', 'Upper edge')}
        {typed && (
          <>
            {' '}
            <button
              type="button"
              className="button button-small"
              onClick={() => onChange({ outlines: others })}
            >
              As small as can be
            </button>
          </>
        )}
      </p>
      <table className="table">
        <caption>
          {id}: {size}, {formatLength(travel, unit)} from hole to hole
        </caption>
        <tbody>
          {workRows(plan, block).map(({ kind, cutId, say, attended }, k) => (
            <tr key={k}>
              <th scope="row">{kind}</th>
              <td>{cutId}</td>
              <td>{say}</td>
              <td>{attended ? 'attended' : ''}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </>
  );
}
