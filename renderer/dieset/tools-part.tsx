import type { DieSet } from '../../core/die/die-set';
import type { DieSetSettings } from '../../core/die-set-settings';
import type { Job } from '../../core/job';
import { formatLength } from '../../core/units';
import { Choice } from '../controls/choice';
import { CountInput } from '../controls/number-input';
import { Part } from '../drawing/part';
import { setDieSet } from '../state/edits/set-die-set';
import { editJob } from '../state/job-edit';
import { hoverTarget } from '../state/select-target';
import { useApp, useAppState } from '../state/use-app';
import { MoreRows, mostRows } from './more-rows';

type Arrangement = DieSetSettings['arrangement'];

const words: Readonly<Record<Arrangement, string>> = {
  simple: 'separate tools for blank and holes',
  'two stations': 'pierced in one station, blanked in the next',
  compound: 'blanked and pierced in one stroke',
};

export interface ToolsPartProps {
  readonly job: Job;
  readonly dieSet: DieSet;
  /** Per side, mm. */
  readonly clearance: number;
}

/** How the tool works, and which contour is on which of its parts. */
export function ToolsPart({ job, dieSet, clearance }: ToolsPartProps) {
  const app = useApp();
  const unit = useAppState((state) => state.unit);
  const { arrangement, stationsApart } = job.dieSet;
  return (
    <Part title="Tools" aside={dieSet.tools.map(({ tool }) => tool.name).join(', ')}>
      <p className="part-line">
        The piece is made with{' '}
        <Choice<Arrangement>
          label="Arrangement of the tool"
          value={arrangement}
          text={words[arrangement]}
          options={(['simple', 'two stations', 'compound'] as const).map((value) => ({
            value,
            name: words[value],
          }))}
          onChoose={(chosen) =>
            editJob(app, setDieSet, { say: `Tool: ${words[chosen]}`, change: { arrangement: chosen } })
          }
        />
        {arrangement === 'two stations' && (
          <>
            ,{' '}
            <CountInput
              label="Steps between the stations"
              value={stationsApart}
              most={9}
              onCommit={(steps, turning) =>
                editJob(
                  app,
                  setDieSet,
                  { say: 'Steps between the stations', change: { stationsApart: steps } },
                  turning,
                )
              }
            />{' '}
            {stationsApart === 1 ? 'step' : 'steps'} of the strip apart
          </>
        )}
        ; {formatLength(clearance, unit)} of clearance per side.
      </p>
      <ul className="plain-rows" aria-label="Parts of the tools">
        {dieSet.tools.flatMap(({ tool, parts }) =>
          parts.slice(0, mostRows).map(({ name, words: what, memberIds }) => (
            <li
              key={`${tool.id}/${name}`}
              className="tool-part"
              onPointerEnter={() =>
                hoverTarget(app, memberIds[0] ? { kind: 'member', id: memberIds[0] } : null)
              }
              onPointerLeave={() => hoverTarget(app, null)}
            >
              <span>{name}</span>
              <span className="panel-note">{what}</span>
            </li>
          )),
        )}
      </ul>
      <MoreRows count={Math.max(0, ...dieSet.tools.map(({ parts }) => parts.length))} />
    </Part>
  );
}
