import type { Job } from '../../core/job';
import { Choice } from '../controls/choice';
import { LengthInput } from '../controls/length-input';
import { PanelValue } from '../controls/panel-value';
import { BlocksPanel } from '../panels/blocks-panel';
import { LeadPanel } from '../panels/lead-panel';
import { setLead, type LeadChange } from '../state/edits/set-lead';
import { editJob } from '../state/job-edit';
import { useApp, useAppState } from '../state/use-app';

/** Start hole, lead-in, tab and direction. */
export function ThreadSentence({ job }: { job: Job }) {
  const app = useApp();
  const { lead } = job;
  const blocks = useAppState((state) => state.made?.plan.blocks.length ?? 0);
  const blocksText = `${blocks} ${blocks === 1 ? 'block' : 'blocks'}, ${job.setup.sequence}`;
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
      hold the pieces by{' '}
      <span className="glued">
        <PanelValue
          label="Start holes, lead-ins and tabs"
          text={tabsText(job)}
          title="Cutting in and holding"
        >
          <LeadPanel job={job} />
        </PanelValue>
        ,
      </span>{' '}
      the slugs{' '}
      <span className="glued">
        <Choice
          label="Slugs"
          value={lead.slug}
          options={[
            { value: 'dropped', name: 'dropped after roughing' },
            { value: 'kept', name: 'kept to the last' },
          ]}
          onChoose={(slug) => change({ slug }, false)}
        />
        ,
      </span>{' '}
      from{' '}
      <span className="glued">
        <PanelValue label="Blocks" text={blocksText} title="Blocks and order of work">
          <BlocksPanel job={job} />
        </PanelValue>
        .
      </span>
    </>
  );
}

function tabsText({ lead, cuts }: Job): string {
  const tabs = lead.tabs === 1 ? 'one tab' : `${lead.tabs} tabs`;
  const rule = lead.tabRule === 'weight' ? 'tabs as their weight asks' : lead.tabLength > 0 ? tabs : 'no tab';
  const own = Object.keys(cuts).length;
  return own === 0 ? rule : `${rule}, ${own} ${own === 1 ? 'cut' : 'cuts'} by hand`;
}
