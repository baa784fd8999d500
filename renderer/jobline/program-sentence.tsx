import type { Job } from '../../core/job';
import { Choice } from '../controls/choice';
import { setOutput } from '../state/edits/set-output';
import { editJob } from '../state/job-edit';
import { useApp } from '../state/use-app';
import { StyleValue } from './style-value';

/** What the programs follow, and how they are written. */
export function ProgramSentence({ job }: { job: Job }) {
  const app = useApp();
  const { output } = job;
  const isStandard = output.style.unitWords === 'G70 and G71';
  return (
    <>
      Programs follow{' '}
      <span className="glued">
        <Choice
          label="Program kind"
          value={output.program}
          options={[
            { value: 'wire centre', name: 'the wire’s centre' },
            { value: 'compensated', name: 'the contour, offset by the control', aside: 'G41/G42' },
          ]}
          onChoose={(program) => editJob(app, setOutput, { program })}
        />
        ,
      </span>{' '}
      in{' '}
      <Choice
        label="Program unit"
        value={output.unit}
        options={[
          { value: 'mm', name: 'mm', aside: isStandard ? 'G71' : 'G21' },
          { value: 'inch', name: 'inch', aside: isStandard ? 'G70' : 'G20' },
        ]}
        onChoose={(unit) => editJob(app, setOutput, { unit })}
      />{' '}
      and in the <StyleValue style={output.style} /> style.
    </>
  );
}
