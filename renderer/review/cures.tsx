import type { Cure, Finding } from '../../core/finding';
import { formatLength, type DisplayUnit } from '../../core/units';
import { nearestCorner } from '../picture/corner-index';
import type { CornerName } from '../state/app-state';
import type { App } from '../state/app-store';
import { setCorner } from '../state/edits/set-corner';
import { setCornerRule } from '../state/edits/set-corner-rule';
import { setSizeShift } from '../state/edits/set-size-shift';
import { setDrawing } from '../state/edits/set-drawing';
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

const hasButton = ({ kind }: Cure): boolean => kind !== 'fillet' && kind !== 'section' && kind !== 'other';

function CureButton({ cure }: { cure: Cure }) {
  const app = useApp();
  const unit = useAppState((state) => state.unit);
  const make = cureEdit(app, cure);
  if (!make) return null;
  return (
    <button type="button" className="button button-small" onClick={make}>
      {shortName(cure, unit)}
    </button>
  );
}

/** The edit that makes the cure; null where it changes the drawing or the tool, which is the designer's to do. */
function cureEdit(app: App, cure: Cure): (() => void) | null {
  switch (cure.kind) {
    case 'wire':
      return () => editJob(app, setWire, cure.diameter);
    case 'match-corners':
      return () =>
        editJob(app, setCornerRule, { role: cure.member, side: 'outside', rule: { rule: 'match' } });
    case 'corner':
      return () =>
        editJob(app, setCorner, { corner: cornerOf(app, cure), change: { [cure.side]: cure.rule } });
    case 'forget-corner':
      return () =>
        editJob(app, setCorner, {
          corner: { contourId: cure.contourId, ...cure.at },
          change: { inside: null, outside: null, path: null },
        });
    case 'unit':
      return () => editJob(app, setDrawing, { unit: cure.unit });
    case 'size-shift':
      return () => editJob(app, setSizeShift, cure);
    case 'fillet':
    case 'section':
    case 'other':
      return null;
  }
}

/** The corner as the drawing has it: a size shift moves what the plan calls the corner. */
function cornerOf(app: App, { contourId, at }: Extract<Cure, { kind: 'corner' }>): CornerName {
  const plan = app.store.getState().made?.plan;
  return (plan && nearestCorner(plan, at, contourId)?.name) ?? { contourId, ...at };
}

function shortName(cure: Cure, unit: DisplayUnit): string {
  switch (cure.kind) {
    case 'wire':
      return `Use ${formatLength(cure.diameter, unit)} wire`;
    case 'match-corners':
      return `Round all ${cure.member} corners`;
    case 'corner':
      return cornerName(cure, unit);
    case 'forget-corner':
      return 'Forget the choice';
    case 'unit':
      return `Read it in ${cure.unit}`;
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

function cornerName({ side, rule }: Extract<Cure, { kind: 'corner' }>, unit: DisplayUnit): string {
  switch (rule.rule) {
    case 'as drawn':
      return 'Leave it as drawn';
    case 'match':
      return side === 'outside' ? 'Round it here' : 'Fillet it here';
    case 'radius':
      return `${side === 'inside' ? 'Fillet' : 'Radius'} of ${formatLength(rule.radius, unit)} here`;
  }
}
