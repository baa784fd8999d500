import type { Job } from '../../core/job';
import { Choice } from '../controls/choice';
import { LengthInput } from '../controls/length-input';
import { setLead, type LeadChange } from '../state/edits/set-lead';
import { setOutput } from '../state/edits/set-output';
import { editJob } from '../state/job-edit';
import { useApp } from '../state/use-app';

/** Start hole, lead-in, tab and direction; then what the programs are written in. */
export function ThreadSentence({ job }: { job: Job }) {
  const app = useApp();
  const { lead, output } = job;
  const change = (part: LeadChange, turning: boolean) => editJob(app, setLead, part, turning);
  return (
    <>
      Thread through{' '}
      <LengthInput
        label="Start hole diameter"
        value={lead.holeDiameter}
        onCommit={(holeDiameter, turning) => change({ holeDiameter }, turning)}
      />{' '}
      holes, at least{' '}
      <LengthInput
        label="Start hole clearance"
        value={lead.holeClearance}
        mayBeZero
        onCommit={(holeClearance, turning) => change({ holeClearance }, turning)}
      />{' '}
      clear of the path, lead in{' '}
      <span className="glued">
        <LengthInput
          label="Lead-in length"
          value={lead.length}
          onCommit={(length, turning) => change({ length }, turning)}
        />
        ,
      </span>{' '}
      run{' '}
      <span className="glued">
        <Choice
          label="Cutting direction"
          value={lead.direction}
          options={[
            { value: 'counter-clockwise', name: 'counter-clockwise' },
            { value: 'clockwise', name: 'clockwise' },
          ]}
          onChoose={(direction) => change({ direction }, false)}
        />
        ,
      </span>{' '}
      hold a{' '}
      <LengthInput
        label="Tab length"
        value={lead.tabLength}
        mayBeZero
        onCommit={(tabLength, turning) => change({ tabLength }, turning)}
      />{' '}
      tab. Programs follow{' '}
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
      <span className="glued">
        <Choice
          label="Program unit"
          value={output.unit}
          options={[
            { value: 'mm', name: 'mm', aside: 'G71' },
            { value: 'inch', name: 'inch', aside: 'G70' },
          ]}
          onChoose={(unit) => editJob(app, setOutput, { unit })}
        />
        .
      </span>
    </>
  );
}
