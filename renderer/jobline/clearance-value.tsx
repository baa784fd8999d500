import { chooseClearance } from '../../core/die/choose-clearance';
import type { Job } from '../../core/job';
import { done, type Result } from '../../core/problem';
import { formatLength, type DisplayUnit } from '../../core/units';
import { Choice } from '../controls/choice';
import { readLength, steppedLength } from '../controls/length-input';
import { ValueInput } from '../controls/value-input';
import { setClearance } from '../state/edits/set-clearance';
import { editJob } from '../state/job-edit';
import { useApp, useAppState } from '../state/use-app';

type Clearance = Job['clearance'];

/** "0.09 mm clearance per side from the stock table": the number in any unit or in % of the thickness, and its rule. */
export function ClearanceValue({ job }: { job: Job }) {
  const app = useApp();
  const unit = useAppState((state) => state.unit);
  const chosen = chooseClearance(job.clearance, job.stock);
  const perSide = chosen.ok ? chosen.value.choice.perSide : null;
  return (
    <>
      <ValueInput<Clearance>
        label="Clearance per side"
        text={perSide === null ? 'no' : formatLength(perSide, unit)}
        read={(text) => readClearance(text, unit, job.stock.thickness)}
        onCommit={(clearance, turning) => editJob(app, setClearance, clearance, turning)}
        stepped={(direction) => {
          const next = perSide === null ? null : steppedLength(perSide, direction, unit, false);
          return next === null ? null : { rule: 'typed', perSide: next };
        }}
      />{' '}
      clearance per side{' '}
      <Choice
        label="Clearance rule"
        value={job.clearance.rule}
        text={ruleWords(job.clearance)}
        options={[
          { value: 'table', name: 'by the stock table', aside: tableAside(job) },
          { value: 'typed', name: 'as typed' },
          { value: 'percent', name: 'at a share of the thickness' },
        ]}
        onChoose={(rule) => {
          const clearance = withRule(rule, perSide, job.stock.thickness);
          if (clearance) editJob(app, setClearance, clearance);
        }}
      />
    </>
  );
}

/** What was typed: a percentage becomes a rule that follows the thickness, anything else a fixed number. */
export function readClearance(text: string, unit: DisplayUnit, thickness: number): Result<Clearance> {
  const length = readLength(text, 'Clearance per side', false, { unit, thickness });
  if (!length.ok) return length;
  if (!text.includes('%')) return done({ rule: 'typed', perSide: length.value });
  return done({ rule: 'percent', percent: percentOf(length.value, thickness) });
}

function ruleWords(clearance: Clearance): string {
  switch (clearance.rule) {
    case 'table':
      return 'by the stock table';
    case 'typed':
      return 'as typed';
    case 'percent':
      return `at ${clearance.percent} % of the thickness`;
  }
}

/** The same clearance under another rule; null where there is none to carry over. */
function withRule(rule: Clearance['rule'], perSide: number | null, thickness: number): Clearance | null {
  if (rule === 'table') return { rule };
  if (perSide === null) return null;
  return rule === 'typed' ? { rule, perSide } : { rule, percent: percentOf(perSide, thickness) };
}

/** Without the last digits of the division: 10 % is 10, not 10.000000000000002. */
const percentOf = (part: number, whole: number): number => Number(((100 * part) / whole).toPrecision(10));

/** What the table says, and on whose word. */
function tableAside(job: Job): string {
  const table = chooseClearance({ rule: 'table' }, job.stock);
  return table.ok ? table.value.choice.reason : '';
}
