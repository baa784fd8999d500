import type { DieSetSettings } from '../../core/die-set-settings';
import type { Job } from '../../core/job';
import { Choice } from '../controls/choice';
import { LengthInput } from '../controls/length-input';
import { CountInput } from '../controls/number-input';
import { QuantityInput } from '../controls/quantity-input';
import { setDieSet } from '../state/edits/set-die-set';
import { editJob } from '../state/job-edit';
import { useApp } from '../state/use-app';

/** How stock and piece come off, and the springs that do it. */
export function SpringsLine({ job }: { job: Job }) {
  const app = useApp();
  const { stripping, knockout, springs, entry } = job.dieSet;
  const change = (part: Partial<DieSetSettings>, say: string, turning = false) =>
    editJob(app, setDieSet, { say, change: part }, turning);
  const hasSprings = stripping === 'springs' || knockout === 'springs';
  const isCounted = springs.count !== null;
  return (
    <p className="part-line">
      Stock stripped by{' '}
      <Choice<DieSetSettings['stripping']>
        label="Stripping"
        value={stripping}
        options={[
          { value: 'fixed', name: 'a fixed stripper' },
          { value: 'springs', name: 'a spring stripper', aside: 'holds the stock flat' },
        ]}
        onChoose={(chosen) => change({ stripping: chosen }, 'Stripping')}
      />
      , piece{' '}
      <Choice<DieSetSettings['knockout']>
        label="Knockout"
        value={knockout}
        options={[
          { value: 'none', name: 'falls through' },
          { value: 'springs', name: 'pushed out by springs', aside: 'lies in the strip again' },
          { value: 'positive', name: 'knocked out by the press', aside: 'positive knockout' },
        ]}
        onChoose={(chosen) => change({ knockout: chosen }, 'Knockout')}
      />
      {hasSprings && (
        <>
          ; springs of{' '}
          <QuantityInput
            label="Spring rate"
            quantity="spring rate"
            value={springs.rate}
            onCommit={(rate, turning) => change({ springs: { ...springs, rate } }, 'Spring rate', turning)}
          />
          , deflected by{' '}
          <LengthInput
            label="Longest deflection of a spring"
            value={springs.longestDeflection}
            onCommit={(longestDeflection, turning) =>
              change({ springs: { ...springs, longestDeflection } }, 'Deflection of a spring', turning)
            }
          />{' '}
          at most,{' '}
          <Choice<'needed' | 'typed'>
            label="Number of springs"
            value={isCounted ? 'typed' : 'needed'}
            options={[
              { value: 'needed', name: 'as many as it takes' },
              { value: 'typed', name: 'a number of them' },
            ]}
            onChoose={(chosen) =>
              change({ springs: { ...springs, count: chosen === 'typed' ? 4 : null } }, 'Number of springs')
            }
          />
          {springs.count !== null && (
            <>
              :{' '}
              <CountInput
                label="Springs"
                value={springs.count}
                most={200}
                onCommit={(count, turning) => change({ springs: { ...springs, count } }, 'Springs', turning)}
              />
            </>
          )}
        </>
      )}
      ; the punch goes{' '}
      <LengthInput
        label="Entry of the punch"
        value={entry}
        mayBeZero
        onCommit={(mm, turning) => change({ entry: mm }, 'Entry of the punch', turning)}
      />{' '}
      beyond the stock.
    </p>
  );
}
