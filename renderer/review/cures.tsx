import type { Cure, Finding } from '../../core/finding';
import { formatLength } from '../../core/units';
import { setPunchCorners } from '../state/edits/set-punch-corners';
import { setWire } from '../state/edits/set-wire';
import { editJob } from '../state/job-edit';
import { useApp, useAppState } from '../state/use-app';

/** What would make the finding vanish; what the program can do itself has a button. */
export function Cures({ finding }: { finding: Finding }) {
  if (finding.cures.length === 0) return null;
  return (
    <ul className="cures" aria-label="What can be done">
      {finding.cures.map((cure) => (
        <li key={`${cure.kind}/${cure.say}`} className="cure">
          <span>{cure.say}</span>
          <CureButton cure={cure} />
        </li>
      ))}
    </ul>
  );
}

function CureButton({ cure }: { cure: Cure }) {
  const app = useApp();
  const unit = useAppState((state) => state.unit);
  switch (cure.kind) {
    case 'wire':
      return (
        <button
          type="button"
          className="button button-small"
          onClick={() => editJob(app, setWire, cure.diameter)}
        >
          Use {formatLength(cure.diameter, unit)} wire
        </button>
      );
    case 'match-corners':
      return (
        <button
          type="button"
          className="button button-small"
          onClick={() => editJob(app, setPunchCorners, 'match the die')}
        >
          Round the punch
        </button>
      );
    case 'fillet':
    case 'section':
    case 'other':
      // These change the drawing or the tool, which is the designer's to do.
      return null;
  }
}
