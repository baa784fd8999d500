import { passesOf, type Job } from '../../core/job';
import { LengthInput } from '../controls/length-input';
import { setSparkGap } from '../state/edits/set-spark-gap';
import { editJob } from '../state/job-edit';
import { useApp } from '../state/use-app';

/** The spark gap of the last pass, which decides what the wire reaches; of each member where it differs. */
export function SparkGapValue({ job }: { job: Job }) {
  const app = useApp();
  const [die, punch] = (['die', 'punch'] as const).map((role) => passesOf(job, role).at(-1)?.sparkGap ?? 0);
  const field = (role: 'die' | 'punch' | 'both', value = 0) => (
    <LengthInput
      label={`Spark gap of the last pass${role === 'both' ? '' : ` of the ${role}`}`}
      value={value}
      mayBeZero
      onCommit={(sparkGap, turning) => editJob(app, setSparkGap, { role, sparkGap }, turning)}
    />
  );
  if (die === punch) return field('both', die);
  return (
    <>
      {field('die', die)} (die) and {field('punch', punch)} (punch)
    </>
  );
}
