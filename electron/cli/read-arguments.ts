import { parseArgs } from 'node:util';
import { done, failed, type Result } from '../../core/problem';

const options = {
  out: { type: 'string' },
  name: { type: 'string' },
  unit: { type: 'string' },
  'gap-tolerance': { type: 'string' },
  material: { type: 'string' },
  materials: { type: 'string' },
  thickness: { type: 'string' },
  clearance: { type: 'string' },
  technology: { type: 'string' },
  'die-height': { type: 'string' },
  'punch-height': { type: 'string' },
  land: { type: 'string' },
  relief: { type: 'string' },
  taper: { type: 'string' },
  tool: { type: 'string' },
  strip: { type: 'string' },
  stripper: { type: 'string' },
  retainer: { type: 'string' },
  wire: { type: 'string' },
  program: { type: 'string' },
  style: { type: 'string' },
  'output-unit': { type: 'string' },
  revision: { type: 'string' },
  date: { type: 'string' },
  page: { type: 'string' },
  charts: { type: 'string' },
  help: { type: 'boolean', short: 'h' },
} as const;

export type OptionName = Exclude<keyof typeof options, 'help'>;

/** What was typed; nothing in it has been understood yet. */
export interface Arguments {
  readonly help: boolean;
  readonly file: string;
  readonly out: string;
  readonly changes: Readonly<Partial<Record<OptionName, string>>>;
  /** Programs to be held against the job in `file`; null where the job is to be worked out. */
  readonly verify: readonly string[] | null;
}

/** The command line taken apart: one file, one out folder, every option known. */
export function readArguments(argv: readonly string[]): Result<Arguments> {
  const parsed = parsedOrProblem(argv);
  if (!parsed.ok) return parsed;
  const { values, positionals, tokens } = parsed.value;
  const names = tokens.flatMap((token) => (token.kind === 'option' ? [token.rawName] : []));
  const twice = names.find((name, k) => names.indexOf(name) < k);
  if (twice !== undefined)
    return usage('An option is given more than once', twice, 'Give it once, with the value that counts.');
  const { help, ...changes } = values;
  if (help) return done({ help: true, file: '', out: '', changes: {}, verify: null });
  const [file, ...more] = positionals;
  if (file === 'verify') return verifyArguments(more, changes);
  if (file === undefined)
    return usage(
      'No drawing or job is given',
      '',
      'Give one drawing (.dxf, .svg, .csv) or job (.diewright.json).',
    );
  if (more.length > 0)
    return usage('More than one file is given', more.join(', '), 'Call the command once for each.');
  if (!changes.out) {
    return usage('No folder for the files is given', '--out', 'Give it, for instance --out made.');
  }
  return done({ help: false, file, out: changes.out, changes, verify: null });
}

function verifyArguments(
  [job, ...programs]: readonly string[],
  changes: Arguments['changes'],
): Result<Arguments> {
  const [option] = Object.keys(changes);
  if (option !== undefined)
    return usage('The job to verify against is taken as it is', `--${option}`, 'Leave the option out.');
  if (job === undefined || programs.length === 0)
    return usage(
      'A job and its programs are needed',
      'verify',
      'Give them: diewright verify JOB.diewright.json PROGRAM.nc ...',
    );
  return done({ help: false, file: job, out: '', changes: {}, verify: programs });
}

function parsedOrProblem(argv: readonly string[]) {
  try {
    return done(parseArgs({ args: [...argv], options, allowPositionals: true, strict: true, tokens: true }));
  } catch (error) {
    if (!(error instanceof Error) || !('code' in error) || !String(error.code).startsWith('ERR_PARSE_ARGS'))
      throw error;
    return usage(error.message.split(/\.\s|\n/)[0] ?? error.message, '', 'See diewright --help.');
  }
}

const usage = (what: string, where: string, whatToDo: string) => failed('usage', what, where, whatToDo);
