import type { CornerRule } from '../../core/die/corner-rules';
import { Choice, type ChoiceOption } from '../controls/choice';
import { LengthInput } from '../controls/length-input';

export interface CornerRuleValueProps {
  readonly label: string;
  readonly side: 'inside' | 'outside';
  /** "die" or "punch": what a matched corner matches. */
  readonly other: string;
  /** Null: by the rule for all, which `ruleForAll` is then. */
  readonly rule: CornerRule | null;
  readonly ruleForAll?: CornerRule;
  /** The radius to start with, mm. */
  readonly startRadius: number;
  readonly onChange: (rule: CornerRule | null, turning: boolean) => void;
}

/** A corner's rule, and its radius where it has one: in a sentence or a table alike. */
export function CornerRuleValue(props: CornerRuleValueProps) {
  const { label, rule, ruleForAll, startRadius, onChange } = props;
  const names = namesOf(props);
  const options: ChoiceOption<Choosable>[] = [
    ...(ruleForAll
      ? [{ value: 'by the rule' as const, name: 'as all others', aside: names[ruleForAll.rule] }]
      : []),
    { value: 'as drawn', name: names['as drawn'] },
    { value: 'match', name: names.match },
    { value: 'radius', name: `${names.radius} …` },
  ];
  const shown = rule ?? ruleForAll ?? { rule: 'as drawn' };
  return (
    <>
      <Choice<Choosable>
        label={label}
        value={rule?.rule ?? 'by the rule'}
        text={names[shown.rule]}
        options={options}
        onChoose={(chosen) => onChange(ruleOf(chosen, startRadius), false)}
      />
      {shown.rule === 'radius' && (
        <>
          {' '}
          <LengthInput
            label={`${label}, radius`}
            value={shown.radius}
            onCommit={(radius, turning) => onChange({ rule: 'radius', radius }, turning)}
          />
        </>
      )}
    </>
  );
}

type Choosable = CornerRule['rule'] | 'by the rule';

function namesOf({
  side,
  other,
  ruleForAll,
}: CornerRuleValueProps): Readonly<Record<CornerRule['rule'], string>> {
  return side === 'outside'
    ? { 'as drawn': 'as drawn', match: `rounded to match the ${other}`, radius: 'rounded by' }
    : {
        'as drawn': `as the wire leaves ${ruleForAll ? 'it' : 'them'}`,
        match: `matched to the ${other}`,
        radius: 'filleted by',
      };
}

function ruleOf(chosen: Choosable, radius: number): CornerRule | null {
  switch (chosen) {
    case 'by the rule':
      return null;
    case 'radius':
      return { rule: 'radius', radius };
    case 'as drawn':
    case 'match':
      return { rule: chosen };
  }
}
