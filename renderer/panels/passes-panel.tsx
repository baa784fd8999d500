import type { Job } from '../../core/job';
import { Choice } from '../controls/choice';
import { setPunchPasses } from '../state/edits/set-punch-passes';
import { editJob } from '../state/job-edit';
import { useApp } from '../state/use-app';
import { PassTable } from './pass-table';

/** The passes, of both members or of each; changing one makes them typed. */
export function PassesPanel({ job }: { job: Job }) {
  const app = useApp();
  const own = job.punchPasses !== null;
  return (
    <div className="passes">
      <p>
        The punch is cut by{' '}
        <Choice
          label="Passes of the punch"
          value={own ? 'own' : 'as the die'}
          options={[
            { value: 'as the die', name: 'the same passes as the die' },
            { value: 'own', name: 'passes of its own' },
          ]}
          onChoose={(which) => editJob(app, setPunchPasses, which)}
        />
        .
      </p>
      <PassTable job={job} role="die" caption={own ? 'Die' : null} />
      {own && <PassTable job={job} role="punch" caption="Punch" />}
    </div>
  );
}
