import { chooseClearance, type ClearanceRule } from '../../core/die/choose-clearance';
import { edgeTypeFraction, edgeTypes, edgeTypeWords, type EdgeType } from '../../core/die/edge-types';
import { squareRootFactor } from '../../core/die/square-root-clearance';
import { materialOf, ownMaterialsOf, type Job } from '../../core/job';
import { done, failed, type Result } from '../../core/problem';
import { formatLength, type DisplayUnit } from '../../core/units';
import { Choice, type ChoiceOption } from '../controls/choice';
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
  const perSide = perSideOf(job.clearance, job);
  return (
    <>
      <ValueInput<Clearance>
        label="Clearance per side"
        text={perSide === null ? 'no' : formatLength(perSide, unit)}
        read={(text) => readClearance(text, unit, job.stock.thickness)}
        onCommit={(clearance, turning) => editJob(app, setClearance, clearance, turning)}
        stepped={(direction) => {
          const next = perSide === null ? null : steppedLength(perSide, direction, unit, 'above');
          return next === null ? null : { rule: 'typed', perSide: next };
        }}
      />{' '}
      clearance per side{' '}
      <Choice<RuleName>
        label="Clearance rule"
        value={ruleName(job.clearance)}
        text={ruleWords(job.clearance)}
        options={ruleOptions(job, unit)}
        onChoose={(rule) => {
          const clearance = withRule(rule, perSide, job.stock.thickness);
          if (clearance) editJob(app, setClearance, clearance);
        }}
      />
      {job.clearance.rule === 'square root' && <FactorValue factor={job.clearance.factor} />}
    </>
  );
}

/** "with factor 0.01", after the square-root formula. */
function FactorValue({ factor }: { factor: number }) {
  const app = useApp();
  return (
    <>
      {' '}
      with factor{' '}
      <ValueInput<number>
        label="Factor of the square-root formula"
        text={String(factor)}
        read={readFactor}
        onCommit={(value, turning) =>
          editJob(app, setClearance, { rule: 'square root', factor: value }, turning)
        }
      />
    </>
  );
}

/** The rules of the menu: each edge type is one of its own. */
type RuleName = Exclude<ClearanceRule['rule'], 'edge type'> | `edge type ${EdgeType}`;

const ruleName = (clearance: Clearance): RuleName =>
  clearance.rule === 'edge type' ? `edge type ${clearance.type}` : clearance.rule;

function ruleOptions(job: Job, unit: DisplayUnit): readonly ChoiceOption<RuleName>[] {
  const family = materialOf(job)?.family ?? null;
  return [
    { value: 'table', name: 'by the stock table', aside: reasonOf({ rule: 'table' }, job) },
    ...edgeTypes
      .filter((type) => edgeTypeFraction(family, type) !== null)
      .map((type) => ({
        value: `edge type ${type}` as const,
        name: `for edge type ${type}`,
        aside: `${sizeOf({ rule: 'edge type', type }, job, unit)}: ${edgeTypeWords[type]}`,
      })),
    {
      value: 'square root',
      name: 'by the square-root formula',
      aside: reasonOf({ rule: 'square root', factor: squareRootFactor.usual }, job),
    },
    { value: 'typed', name: 'as typed' },
    { value: 'percent', name: 'at a share of the thickness' },
  ];
}

/** What was typed: a percentage becomes a rule that follows the thickness, anything else a fixed number. */
export function readClearance(text: string, unit: DisplayUnit, thickness: number): Result<Clearance> {
  const length = readLength(text, 'Clearance per side', false, { unit, thickness });
  if (!length.ok) return length;
  if (!text.includes('%')) return done({ rule: 'typed', perSide: length.value });
  return done({ rule: 'percent', percent: percentOf(length.value, thickness) });
}

function readFactor(text: string): Result<number> {
  const factor = Number(text.trim().replace(',', '.'));
  const { from, to } = squareRootFactor;
  if (factor >= from && factor <= to) return done(factor);
  return failed(
    'factor-out-of-range',
    `The factor can't be ${text.trim()}`,
    '',
    `Type a number from ${from} (fine edge) to ${to} (least force); ${squareRootFactor.usual} is usual.`,
  );
}

function ruleWords(clearance: Clearance): string {
  switch (clearance.rule) {
    case 'table':
      return 'by the stock table';
    case 'edge type':
      return `for edge type ${clearance.type}`;
    case 'square root':
      return 'by the square-root formula';
    case 'typed':
      return 'as typed';
    case 'percent':
      return `at ${clearance.percent} % of the thickness`;
  }
}

/** The same clearance under another rule; null where there is none to carry over. */
function withRule(rule: RuleName, perSide: number | null, thickness: number): Clearance | null {
  if (rule === 'table') return { rule };
  if (rule === 'square root') return { rule, factor: squareRootFactor.usual };
  if (rule === 'typed') return perSide === null ? null : { rule, perSide };
  if (rule === 'percent') return perSide === null ? null : { rule, percent: percentOf(perSide, thickness) };
  const type = edgeTypes.find((known) => rule === `edge type ${known}`);
  return type ? { rule: 'edge type', type } : null;
}

/** Without the last digits of the division: 10 % is 10, not 10.000000000000002. */
const percentOf = (part: number, whole: number): number => Number(((100 * part) / whole).toPrecision(10));

function choiceOf(rule: ClearanceRule, job: Job) {
  const chosen = chooseClearance(rule, job.stock, ownMaterialsOf(job));
  return chosen.ok ? chosen.value.choice : null;
}

const perSideOf = (rule: ClearanceRule, job: Job): number | null => choiceOf(rule, job)?.perSide ?? null;

/** What the rule comes to, and on whose word. */
const reasonOf = (rule: ClearanceRule, job: Job): string => choiceOf(rule, job)?.reason ?? '';

function sizeOf(rule: ClearanceRule, job: Job, unit: DisplayUnit): string {
  const perSide = perSideOf(rule, job);
  return perSide === null ? '' : formatLength(perSide, unit);
}
