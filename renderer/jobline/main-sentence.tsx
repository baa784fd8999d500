import type { Job } from '../../core/job';
import type { Plan } from '../../core/plan';
import { LengthInput } from '../controls/length-input';
import { PanelValue } from '../controls/panel-value';
import { ContoursPanel } from '../panels/contours-panel';
import { PassesPanel } from '../panels/passes-panel';
import { setThickness } from '../state/edits/set-thickness';
import { setWire } from '../state/edits/set-wire';
import { editJob } from '../state/job-edit';
import { passesInWords } from '../state/pass-name';
import { useApp, useAppState } from '../state/use-app';
import { ClearanceValue } from './clearance-value';
import { CornersValue } from './corners-value';
import { MaterialValue } from './material-value';
import { ReliefValue } from './relief-value';
import { SparkGapValue } from './spark-gap-value';

/** "Blank from 1.5 mm half-hard cold-rolled steel, 0.09 mm clearance per side …; cut with 0.25 mm wire, …" */
export function MainSentence({ job }: { job: Job }) {
  const app = useApp();
  const plan = useAppState((state) => state.made?.plan ?? null);
  const uses = usesOf(plan);
  return (
    <>
      <PanelValue label="Contours" text={verbs[uses]} title="What each contour is for">
        <ContoursPanel />
      </PanelValue>{' '}
      from{' '}
      <LengthInput
        label="Stock thickness"
        value={job.stock.thickness}
        onCommit={(mm, turning) => editJob(app, setThickness, mm, turning)}
      />{' '}
      <span className="glued">
        <MaterialValue job={job} />,
      </span>{' '}
      <ClearanceValue job={job} />
      {takenFrom[uses]}, <CornersValue job={job} /> <ReliefValue job={job} /> cut with{' '}
      <LengthInput
        label="Wire diameter"
        value={job.wire.diameter}
        onCommit={(mm, turning) => editJob(app, setWire, mm, turning)}
      />{' '}
      wire, <SparkGapValue job={job} /> spark gap,{' '}
      <span className="glued">
        <PanelValue label="Passes" text={passesInWords(job)} title="Passes">
          <PassesPanel job={job} />
        </PanelValue>
        .
      </span>
    </>
  );
}

type Uses = 'none' | 'blank' | 'pierce' | 'both' | 'mate';

const verbs: Readonly<Record<Uses, string>> = {
  none: 'Cut',
  blank: 'Blank',
  pierce: 'Pierce',
  both: 'Blank and pierce',
  mate: 'Fit plug and hole',
};

const takenFrom: Readonly<Record<Uses, string>> = {
  none: '',
  blank: ' taken from the punch',
  pierce: ' taken from the die',
  both: ' taken from the punch and, where it pierces, from the die',
  mate: '',
};

function usesOf(plan: Plan | null): Uses {
  const uses = new Set(plan?.pairs.map(({ use }) => use));
  if (uses.has('blank')) return uses.has('pierce') ? 'both' : 'blank';
  return uses.has('pierce') ? 'pierce' : uses.has('mate') ? 'mate' : 'none';
}
