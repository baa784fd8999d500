import { readReliefAngle } from '../../core/die/relief-rules';
import { stockMaterial, stockMaterials } from '../../core/die/stock-materials';
import { followTable } from '../../core/follow-table';
import { ownMaterialsOf, type Job } from '../../core/job';
import { mergedMaterials } from '../../core/materials-file';
import { done, failed, type Result } from '../../core/problem';
import { drawingUnits, parseLength, type DrawingUnit } from '../../core/units';
import { dieSetOptions } from './die-set-options';
import type { OptionFiles } from './option-files';
import type { Arguments, OptionName } from './read-arguments';
import { sheetOptions } from './sheet-options';

/** Options that name a file, whose content comes by itself. */
type FileOption = keyof OptionFiles;

type Change = (job: Job, text: string) => Result<Job>;

/**
 * What each option makes of the job, in the order in which they are applied: the thickness before a clearance that is
 * a share of it.
 */
const changeByOption: Readonly<Record<Exclude<OptionName, 'out' | FileOption>, Change>> = {
  name: (job, name) => done({ ...job, name }),
  unit: (job, text) => {
    const unit = text === 'in' ? 'inch' : text;
    if (!isDrawingUnit(unit)) {
      return refuse(
        'unit',
        `"${text}" is not a unit of drawings`,
        `Use one of ${Object.keys(drawingUnits).join(', ')}.`,
      );
    }
    return done({ ...job, drawing: { ...job.drawing, unit } });
  },
  'gap-tolerance': (job, text) =>
    withLength('gap-tolerance', text, (gapTolerance) => ({
      ...job,
      drawing: { ...job.drawing, gapTolerance },
    })),
  material: (job, material) => {
    // Own materials go by the name that their owner gave them.
    const own = job.ownMaterials.find(({ name }) => name === material);
    if (!own && !stockMaterial(material, ownMaterialsOf(job))) {
      const known = [...stockMaterials, ...job.ownMaterials].map(({ id }) => id).join(', ');
      return refuse('material', `"${material}" is not in the stock table`, `Use one of ${known}.`);
    }
    return done({ ...job, stock: { ...job.stock, material: own?.id ?? material } });
  },
  thickness: (job, text) =>
    withLength('thickness', text, (thickness) => ({ ...job, stock: { ...job.stock, thickness } })),
  clearance: (job, text) => {
    if (text === 'table') return done({ ...job, clearance: { rule: 'table' } });
    const share = /^\s*([-+\d.,]+)\s*%\s*t?\s*$/.exec(text)?.[1];
    if (share === undefined) {
      return withLength('clearance', text, (perSide) => ({ ...job, clearance: { rule: 'typed', perSide } }));
    }
    const percent = Number(share.replace(',', '.'));
    if (!(percent > 0))
      return refuse('clearance', `"${text}" is not more than zero`, 'Give a share such as 6%.');
    return done({ ...job, clearance: { rule: 'percent', percent } });
  },
  'die-height': (job, text) =>
    withLength('die-height', text, (die) => followTable({ ...job, blocks: { ...job.blocks, die } })),
  'punch-height': (job, text) =>
    withLength('punch-height', text, (punch) => followTable({ ...job, blocks: { ...job.blocks, punch } })),
  land: (job, text) => withLength('land', text, (land) => ({ ...job, relief: { ...job.relief, land } })),
  relief: (job, text) =>
    text === 'none'
      ? done({ ...job, relief: { ...job.relief, kind: 'none' } })
      : withAngle('relief', text, (angleDeg) => ({
          ...job,
          relief: { ...job.relief, kind: 'land and relief', angleDeg },
        })),
  taper: (job, text) =>
    withAngle('taper', text, (angleDeg) => ({
      ...job,
      relief: { ...job.relief, kind: 'one tapered cut', angleDeg },
    })),
  wire: (job, text) => withLength('wire', text, (diameter) => followTable({ ...job, wire: { diameter } })),
  program: (job, text) => {
    if (text !== 'centre' && text !== 'compensated') {
      return refuse('program', `"${text}" is no style of program`, 'Use centre or compensated.');
    }
    const program = text === 'centre' ? 'wire centre' : text;
    return done({ ...job, output: { ...job.output, program } });
  },
  'output-unit': (job, text) => {
    const unit = text === 'in' ? 'inch' : text;
    if (unit !== 'mm' && unit !== 'inch')
      return refuse('output-unit', `"${text}" is no output unit`, 'Use mm or inch.');
    return done({ ...job, output: { ...job.output, unit } });
  },
  ...dieSetOptions,
  ...sheetOptions,
};

/** The job with what the command line says about it; a technology table comes before wire and heights. */
export function changeJob(
  job: Job,
  changes: Arguments['changes'],
  files: OptionFiles = noFiles,
): Result<Job> {
  let changed = withFiles(job, files);
  for (const [name, change] of Object.entries(changeByOption) as [keyof typeof changeByOption, Change][]) {
    const text = changes[name];
    if (text === undefined) continue;
    const result = change(changed, text);
    if (!result.ok) return result;
    changed = result.value;
  }
  return reliefTrouble(changed, changes) ?? done(changed);
}

/** What was said of the die's relief and would be passed over in silence. */
function reliefTrouble({ relief: { kind } }: Job, { land, relief = 'none', taper }: Arguments['changes']) {
  if (taper !== undefined && relief !== 'none')
    return refuse(
      'taper',
      'A die has a relief below its land or is tapered, not both',
      'Leave --relief out.',
    );
  if (land !== undefined && kind !== 'land and relief')
    return refuse('land', 'A land is there for the relief below it', 'Give --relief too, such as 0.5.');
  return null;
}

const noFiles: OptionFiles = { technology: undefined, style: undefined };

function withFiles(before: Job, { technology, style, materials = [] }: OptionFiles): Job {
  const job = { ...before, ownMaterials: [...mergedMaterials(before.ownMaterials, materials)] };
  const styled = style ? { ...job, output: { ...job.output, style } } : job;
  return technology ? followTable({ ...styled, technology, passRule: 'table' }) : styled;
}

function withLength(option: OptionName, text: string, change: (mm: number) => Job): Result<Job> {
  const length = parseLength(text, { unit: 'mm' });
  if (!length.ok) return { ok: false, problem: { ...length.problem, where: `--${option}` } };
  if (!(length.value > 0))
    return refuse(option, `"${text}" is not more than zero`, 'Give a length such as 0.25mm.');
  return done(change(length.value));
}

function withAngle(option: OptionName, text: string, change: (degrees: number) => Job): Result<Job> {
  const angle = readReliefAngle(text);
  return angle.ok
    ? done(change(angle.value))
    : { ok: false, problem: { ...angle.problem, where: `--${option}` } };
}

const isDrawingUnit = (text: string): text is DrawingUnit => Object.hasOwn(drawingUnits, text);

const refuse = (option: OptionName, what: string, whatToDo: string) =>
  failed('option-value', what, `--${option}`, whatToDo);
