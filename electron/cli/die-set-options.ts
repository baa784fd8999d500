import type { DieSetSettings, FitSettings } from '../../core/die-set-settings';
import { fitAllowance } from '../../core/die/fit-allowance';
import { followTable } from '../../core/follow-table';
import type { Job } from '../../core/job';
import type { PlateName } from '../../core/plan';
import { done, failed, type Result } from '../../core/problem';
import { parseLength } from '../../core/units';

type Change = (job: Job, text: string) => Result<Job>;

const arrangements: Readonly<Record<string, DieSetSettings['arrangement']>> = {
  simple: 'simple',
  'two-stations': 'two stations',
  compound: 'compound',
};

const ups: Readonly<Record<string, DieSetSettings['strip']['up']>> = {
  none: 'none',
  1: 'one up',
  2: 'two up',
};

/** What the command line says about the die set. */
export const dieSetOptions = {
  tool: chosen('tool', arrangements, (dieSet, arrangement) => ({ ...dieSet, arrangement })),
  strip: chosen('strip', ups, (dieSet, up) => ({ ...dieSet, strip: { ...dieSet.strip, up } })),
  stripper: plate('stripper'),
  retainer: plate('retainer'),
} as const;

function chosen<V>(
  option: string,
  values: Readonly<Record<string, V>>,
  change: (dieSet: DieSetSettings, value: V) => DieSetSettings,
): Change {
  return (job, text) => {
    const value = Object.hasOwn(values, text) ? values[text] : undefined;
    return value === undefined
      ? failed(
          'option-value',
          `"${text}" is not known`,
          `--${option}`,
          `Use ${Object.keys(values).join(', ')}.`,
        )
      : done({ ...job, dieSet: change(job.dieSet, value) });
  };
}

function plate(name: PlateName): Change {
  return (job, text) => {
    const change = (part: Partial<DieSetSettings[PlateName]>): Job =>
      followTable({ ...job, dieSet: { ...job.dieSet, [name]: { ...job.dieSet[name], ...part } } });
    if (text === 'none') return done(change({ make: false }));
    const fit = readFit(text);
    return fit.ok
      ? done(change({ make: true, fit: fit.value }))
      : { ok: false, problem: { ...fit.problem, where: `--${name}` } };
  };
}

/** "H7/f7", or a length per side. */
function readFit(text: string): Result<FitSettings> {
  const [hole, shaft] = text.split('/');
  if (shaft === undefined || !/^[a-z]/i.test(text)) {
    const perSide = parseLength(text, { unit: 'mm' });
    return perSide.ok ? done({ rule: 'allowance', perSide: perSide.value }) : perSide;
  }
  const fit = { rule: 'iso', hole: hole ?? '', shaft } as const;
  const known = fitAllowance({ ...fit, nominal: middleSize }, 'hole');
  return known.ok ? done({ ...fit, nominal: null }) : known;
}

/** Classes are looked up in the middle of the table; the size comes from the punch. mm. */
const middleSize = 30;
