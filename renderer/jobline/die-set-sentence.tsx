import type { DieSetSettings } from '../../core/die-set-settings';
import type { Job } from '../../core/job';
import { Choice } from '../controls/choice';
import { setDieSet } from '../state/edits/set-die-set';
import { editJob } from '../state/job-edit';
import { useApp } from '../state/use-app';

/** "Separate tools, one up on the strip, 5.2 kN." The rest of the die set is beside the picture. */
export function DieSetSentence({ job }: { job: Job }) {
  const app = useApp();
  const { arrangement, strip } = job.dieSet;
  return (
    <>
      <Choice<DieSetSettings['arrangement']>
        label="Tool"
        value={arrangement}
        options={[
          { value: 'simple', name: 'Separate tools', aside: 'one that blanks, one that pierces' },
          { value: 'two stations', name: 'Two stations', aside: 'pierced first, then blanked' },
          { value: 'compound', name: 'Compound tool', aside: 'both in one stroke' },
        ]}
        onChoose={(chosen) =>
          editJob(app, setDieSet, { say: `Tool: ${chosen}`, change: { arrangement: chosen } })
        }
      />
      ,{' '}
      <span className="glued">
        <Choice<DieSetSettings['strip']['up']>
          label="Strip"
          value={strip.up}
          options={[
            { value: 'none', name: 'no strip yet' },
            { value: 'one up', name: 'one up on the strip' },
            { value: 'two up', name: 'two up on the strip' },
          ]}
          onChoose={(up) =>
            editJob(app, setDieSet, { say: `Strip: ${up}`, change: { strip: { ...strip, up } } })
          }
        />
        .
      </span>
    </>
  );
}
