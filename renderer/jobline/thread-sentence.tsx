import type { Job } from '../../core/job';
import { Choice } from '../controls/choice';
import { LengthInput } from '../controls/length-input';
import { setLead, type LeadChange } from '../state/edits/set-lead';
import { editJob } from '../state/job-edit';
import { useApp } from '../state/use-app';

/** Start hole, lead-in, tab and direction. */
export function ThreadSentence({ job }: { job: Job }) {
  const app = useApp();
  const { lead } = job;
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
      tab.
    </>
  );
}
