import type { FitSettings } from '../../core/die-set-settings';
import { fitAllowance } from '../../core/die/fit-allowance';
import { done, failed, type Result } from '../../core/problem';
import { Choice } from '../controls/choice';
import { LengthInput } from '../controls/length-input';
import { ValueInput } from '../controls/value-input';

export interface FitValueProps {
  /** Whose fit it is, for the fields' names. */
  readonly of: string;
  readonly fit: FitSettings;
  /** The size that stands where no nominal one is typed, mm. */
  readonly size: number;
  readonly onChange: (fit: FitSettings, turning?: boolean) => void;
}

/** "0.01 mm per side" or "H7/g6 by ISO 286 at 20 mm". */
export function FitValue({ of, fit, size, onChange }: FitValueProps) {
  return (
    <>
      {fit.rule === 'allowance' ? (
        <>
          <LengthInput
            label={`Allowance of ${of} per side`}
            value={fit.perSide}
            mayBeNegative
            onCommit={(perSide, turning) => onChange({ rule: 'allowance', perSide }, turning)}
          />{' '}
          per side,
        </>
      ) : (
        <>
          <ValueInput
            label={`Classes of ${of}`}
            text={`${fit.hole}/${fit.shaft}`}
            read={readClasses}
            onCommit={(classes) => onChange({ ...fit, ...classes })}
          />{' '}
          at{' '}
          <Choice<'own' | 'typed'>
            label={`Where the nominal size of ${of} comes from`}
            value={fit.nominal === null ? 'own' : 'typed'}
            text={fit.nominal === null ? 'its own size' : 'a nominal size of'}
            options={[
              { value: 'own', name: 'its own size', aside: 'the longer side' },
              { value: 'typed', name: 'a nominal size' },
            ]}
            onChoose={(chosen) => onChange({ ...fit, nominal: chosen === 'own' ? null : size })}
          />
          {fit.nominal !== null && (
            <>
              {' '}
              <LengthInput
                label={`Nominal size of ${of}`}
                value={fit.nominal}
                onCommit={(nominal, turning) => onChange({ ...fit, nominal }, turning)}
              />
            </>
          )}
          ,
        </>
      )}{' '}
      <Choice<FitSettings['rule']>
        label={`Rule for ${of}`}
        value={fit.rule}
        text={fit.rule === 'iso' ? 'by ISO 286' : 'typed'}
        options={[
          { value: 'allowance', name: 'a typed allowance', aside: 'below zero it presses' },
          { value: 'iso', name: 'tolerance classes of ISO 286', aside: 'such as H7/g6' },
        ]}
        onChoose={(rule) =>
          onChange(
            rule === 'iso'
              ? { rule, hole: 'H7', shaft: 'g6', nominal: null }
              : { rule, perSide: rule === fit.rule ? fit.perSide : startingAllowance },
          )
        }
      />
    </>
  );
}

/** mm per side: an easy sliding fit, common practice. */
const startingAllowance = 0.01;

/** "H7/g6": checked in the middle of the table, since the size may change. */
function readClasses(text: string): Result<{ hole: string; shaft: string }> {
  const [hole = '', shaft = ''] = text.split(/[/\s]+/).filter((part) => part !== '');
  if (hole === '' || shaft === '') {
    return failed('fit-classes', `"${text.trim()}" is no fit`, '', 'Type hole and shaft, such as H7/g6.');
  }
  const allowed = fitAllowance({ rule: 'iso', hole, shaft, nominal: middleSize }, 'hole');
  return allowed.ok ? done({ hole, shaft }) : allowed;
}

const middleSize = 30;
