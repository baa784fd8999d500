import type { Job } from '../../core/job';
import { Choice } from '../controls/choice';
import { LengthInput } from '../controls/length-input';
import { setBlock } from '../state/edits/set-block';
import { setPassRule } from '../state/edits/set-pass-rule';
import { editJob } from '../state/job-edit';
import { useApp } from '../state/use-app';

/** How high the blocks are, and where the passes come from. */
export function BlockSentence({ job }: { job: Job }) {
  const app = useApp();
  return (
    <>
      Die{' '}
      <LengthInput
        label="Height of the die"
        value={job.blocks.die}
        onCommit={(height, turning) => editJob(app, setBlock, { role: 'die', height }, turning)}
      />{' '}
      and punch{' '}
      <LengthInput
        label="Height of the punch"
        value={job.blocks.punch}
        onCommit={(height, turning) => editJob(app, setBlock, { role: 'punch', height }, turning)}
      />{' '}
      high, passes{' '}
      <span className="glued">
        <Choice
          label="Where the passes come from"
          value={job.passRule}
          options={[
            { value: 'table', name: 'by the technology table', aside: job.technology.name },
            { value: 'typed', name: 'as typed' },
            { value: 'edit', name: 'Open the technology table…' },
          ]}
          onChoose={(rule) => {
            if (rule === 'edit') app.store.setState({ dialog: 'technology' });
            else editJob(app, setPassRule, rule);
          }}
        />
        .
      </span>
    </>
  );
}
