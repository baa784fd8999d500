import type { Cure, Finding } from '../../core/finding';
import { formatLength, type DisplayUnit } from '../../core/units';
import { setDieCorners } from '../state/edits/set-die-corners';
import { setSizeShift } from '../state/edits/set-size-shift';
import { setPunchCorners } from '../state/edits/set-punch-corners';
import { setWire } from '../state/edits/set-wire';
import { editJob } from '../state/job-edit';
import { useApp, useAppState } from '../state/use-app';

export interface CuresProps {
  readonly finding: Finding;
  /** In whole sentences; otherwise a few words each. */
  readonly whole: boolean;
}

/** What would make the finding vanish; what the program can do itself has a button. */
export function Cures({ finding, whole }: CuresProps) {
  const unit = useAppState((state) => state.unit);
  if (finding.cures.length === 0) return null;
  return (
    <ul className={whole ? 'cures cures-whole' : 'cures'} aria-label="What can be done">
      {finding.cures.map((cure) => (
        <li key={`${cure.kind}/${cure.say}`} className="cure">
          {(whole || !hasButton(cure)) && <span>{whole ? cure.say : shortName(cure, unit)}</span>}
          <CureButton cure={cure} />
        </li>
      ))}
    </ul>
  );
}

const hasButton = ({ kind }: Cure): boolean =>
  kind === 'wire' || kind === 'match-corners' || kind === 'size-shift';

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
          {shortName(cure, unit)}
        </button>
      );
    case 'match-corners':
      return (
        <button
          type="button"
          className="button button-small"
          onClick={() =>
            cure.member === 'punch'
              ? editJob(app, setPunchCorners, 'match the die')
              : editJob(app, setDieCorners, 'match the punch')
          }
        >
          {shortName(cure, unit)}
        </button>
      );
    case 'size-shift':
      return (
        <button
          type="button"
          className="button button-small"
          onClick={() => editJob(app, setSizeShift, cure)}
        >
          {shortName(cure, unit)}
        </button>
      );
    case 'fillet':
    case 'section':
    case 'other':
      // These change the drawing or the tool, which is the designer's to do.
      return null;
  }
}

function shortName(cure: Cure, unit: DisplayUnit): string {
  switch (cure.kind) {
    case 'wire':
      return `Use ${formatLength(cure.diameter, unit)} wire`;
    case 'match-corners':
      return `Round the ${cure.member}`;
    case 'size-shift':
      return cure.sizeShift === 0
        ? 'No size shift'
        : `Shift by ${formatLength(cure.sizeShift, unit)} per side`;
    case 'fillet':
      return `fillet of ${formatLength(cure.radius, unit)}`;
    case 'section':
      return 'split section';
    case 'other':
      return cure.say;
  }
}
