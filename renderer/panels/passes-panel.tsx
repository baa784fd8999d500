import { platesOf, type Job } from '../../core/job';
import { Choice } from '../controls/choice';
import { hasOwnPasses } from '../state/edits/passes-of-member';
import { setOwnPasses, type OwnPasses } from '../state/edits/set-own-passes';
import { editJob } from '../state/job-edit';
import { useApp } from '../state/use-app';
import { PassTable } from './pass-table';

/** The passes of every part; changing one makes them typed. */
export function PassesPanel({ job }: { job: Job }) {
  const app = useApp();
  const parts: readonly OwnPasses['part'][] = ['punch', ...platesOf(job)];
  const own = parts.filter((part) => hasOwnPasses(job, part));
  return (
    <div className="passes">
      {parts.map((part) => (
        <p key={part}>
          The {part} is cut by{' '}
          <Choice<OwnPasses['which']>
            label={`Passes of the ${part}`}
            value={hasOwnPasses(job, part) ? 'own' : 'as the die'}
            options={[
              { value: 'as the die', name: 'the same passes as the die' },
              { value: 'own', name: 'passes of its own' },
            ]}
            onChoose={(which) => editJob(app, setOwnPasses, { part, which })}
          />
          .
        </p>
      ))}
      <PassTable job={job} part="die" caption={own.length > 0 ? 'Die' : null} />
      {own.map((part) => (
        <PassTable key={part} job={job} part={part} caption={`${part[0]?.toUpperCase()}${part.slice(1)}`} />
      ))}
    </div>
  );
}
