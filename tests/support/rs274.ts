import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { PlainMove } from './move-distance';

export interface Rs274Move {
  readonly type: 'line' | 'rapid' | 'arc';
  readonly from: Pair;
  readonly to: Pair;
  /** Side of the offset while the move was made. */
  readonly comp: 'off' | 'left' | 'right';
  readonly centre: Pair | null;
  readonly counterClockwise: boolean;
}

export interface Rs274Reply {
  /** What the interpreter refused, null where it ran to the end. */
  readonly error: string | null;
  readonly unit: 'mm' | 'inch';
  readonly ended: boolean;
  readonly moves: readonly Rs274Move[];
  readonly stops: number;
}

type Pair = readonly [number, number];

/**
 * A move by its points, scaled to mm. An arc of a few steps of the answer (fillets that a control rounds) has lost its
 * shape to the 4 decimals, its direction even, and counts as a line.
 */
export function plainMove({ from, to, centre, counterClockwise }: Rs274Move, scale: number): PlainMove {
  const point = ([x, y]: Pair) => ({ x: x * scale, y: y * scale });
  const radius = centre ? Math.hypot(from[0] - centre[0], from[1] - centre[1]) : 0;
  const shown = centre !== null && radius > 20 * step;
  return { from: point(from), to: point(to), centre: shown ? point(centre) : null, counterClockwise };
}

/** Of the interpreter's answer, in the program's unit. */
const step = 0.0001;

/**
 * Runs LinuxCNC's stand-alone interpreter `rs274` (RS274/NGC, NIST IR 6556) on a program and returns the moves it
 * makes, in the program's unit, with the 4 decimals it prints. Only the plane of G17. Measured traps:
 * - the tool table is in inches whatever the program's unit, and holds diameters, so `offsets` (mm, by D number) are
 *   doubled and divided by 25.4;
 * - it rewrites its variables file, and shares its tools with every other run through a file in the home folder, so
 *   everything lies in a folder of its own, its home too;
 * - a refused program ends with 1 and says why on standard error; the moves before it are kept.
 */
export function runRs274(program: string, offsets: Readonly<Record<number, number>> = {}): Rs274Reply {
  const folder = mkdtempSync(join(tmpdir(), 'diewright-rs274-'));
  try {
    const write = (name: string, text: string) => {
      writeFileSync(join(folder, name), text);
      return join(folder, name);
    };
    const toolLines = Object.entries(offsets).map(
      ([number, mm]) => `T${number} P${number} D${((2 * mm) / 25.4).toFixed(12)} Z0\n`,
    );
    const options = ['-g', '-t', write('tool.tbl', toolLines.join('')), '-v', write('vars.var', '')];
    const run = spawnSync('rs274', [...options, write('program.ngc', program)], {
      encoding: 'utf8',
      timeout: 20_000,
      cwd: folder,
      env: { ...process.env, HOME: folder },
    });
    if (run.error) throw run.error;
    const said = run.stderr.split('\n').filter((line) => line !== '' && line !== 'executing');
    return {
      ...readMoves(run.stdout),
      error: run.status === 0 ? null : (said[0] ?? `ended with ${run.status}`),
    };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** One canonical command: "  12 N7  ARC_FEED(1.0000, …)". */
const commandLine = /^\s*\d+\s+N\S+\s+([A-Z_0-9]+)\((.*)\)\s*$/;

function readMoves(text: string): Omit<Rs274Reply, 'error'> {
  const moves: Rs274Move[] = [];
  let unit: Rs274Reply['unit'] = 'mm';
  let comp: Rs274Move['comp'] = 'off';
  let at: Pair = [0, 0];
  let ended = false;
  let stops = 0;
  const add = (type: Rs274Move['type'], to: Pair, centre: Pair | null, counterClockwise: boolean) => {
    moves.push({ type, from: at, to, comp, centre, counterClockwise });
    at = to;
  };
  for (const line of text.split('\n')) {
    const [, name, given = ''] = commandLine.exec(line) ?? [];
    const [a = NaN, b = NaN, c = NaN, d = NaN, turns = NaN] = given.split(',').map(Number);
    if (name === 'USE_LENGTH_UNITS') unit = given.includes('MM') ? 'mm' : 'inch';
    if (name === 'STRAIGHT_TRAVERSE') add('rapid', [a, b], null, false);
    if (name === 'STRAIGHT_FEED') add('line', [a, b], null, false);
    // End point, centre, turns: positive counter-clockwise.
    if (name === 'ARC_FEED') add('arc', [a, b], [c, d], turns > 0);
    if (name === 'PROGRAM_STOP') stops += 1;
    if (name === 'PROGRAM_END') ended = true;
    const side = /cutter radius compensation (off|on left|on right)/.exec(given)?.[1];
    if (name === 'COMMENT' && side) comp = side === 'off' ? 'off' : side === 'on left' ? 'left' : 'right';
  }
  return { unit, ended, moves, stops };
}
