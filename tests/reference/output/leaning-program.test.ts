import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { readProgram } from '../../../core/check/read-program';
import { newRelief, type ReliefSettings } from '../../../core/die/relief-rules';
import type { Job } from '../../../core/job';
import { neutralStyle, rs274Style } from '../../../core/neutral-style';
import { createPipeline } from '../../../core/pipeline';
import { programDialectOf } from '../../../core/program-dialect-of';
import type { ProgramStyle } from '../../../core/program-style';
import { jobOn } from '../../support/dxf-of';
import { rs274 } from '../../support/outside-tool';
import { readProgram as plainReader } from '../../support/read-program';
import { angleShape, roundedRectangle } from '../../support/shapes';

/** X, Y and the places of the two further axes at the end of each move. */
type Ends = readonly (readonly [number, number, number, number])[];

/**
 * The moves that LinuxCNC's stand-alone interpreter `rs274` makes of a program. Built as it is, it knows no U and V:
 * they are exchanged for the letters of two other axes, which it runs and prints in the same way.
 */
function interpreted(text: string): Ends {
  const folder = mkdtempSync(join(tmpdir(), 'diewright-leaning-'));
  try {
    const program = text
      .replace(/^(N\d+) G71$/m, '$1 G21')
      .replace(/^(N\d+) G70$/m, '$1 G20')
      .replace(/\([^)]*\)|[UV](?=-?[\d.])/g, (word) => ({ U: 'A', V: 'B' })[word] ?? word);
    const place = (name: string) => join(folder, name);
    writeFileSync(place('program.ngc'), program);
    writeFileSync(place('tool.tbl'), '');
    writeFileSync(place('vars.var'), '');
    const run = spawnSync(
      'rs274',
      ['-g', '-t', place('tool.tbl'), '-v', place('vars.var'), place('program.ngc')],
      { encoding: 'utf8', timeout: 60_000, cwd: folder, env: { ...process.env, HOME: folder } },
    );
    if (run.status !== 0) throw new Error(run.stderr);
    return run.stdout.split('\n').flatMap((line): Ends => {
      const [, name, given = ''] = /^\s*\d+\s+N\S+\s+([A-Z_0-9]+)\((.*)\)\s*$/.exec(line) ?? [];
      const numbers = given.split(',').map(Number);
      const at = (i: number): number => numbers[i] ?? NaN;
      if (name === 'STRAIGHT_TRAVERSE' || name === 'STRAIGHT_FEED') return [[at(0), at(1), at(3), at(4)]];
      // End point, centre, turns, height, then the further axes.
      return name === 'ARC_FEED' ? [[at(0), at(1), at(6), at(7)]] : [];
    });
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** The same by our own reader, in the program's unit. */
function read(text: string, perUnit: number, style: ProgramStyle): Ends {
  const reading = readProgram(text, programDialectOf(style));
  if (!reading.ok) throw new Error(reading.problem.what);
  return reading.value.moves.map(({ to }) => [
    to.x / perUnit,
    to.y / perUnit,
    to.u / perUnit,
    to.v / perUnit,
  ]);
}

function dieProgram(
  relief: Partial<ReliefSettings>,
  unit: Job['output']['unit'],
  style: ProgramStyle,
): string {
  const job = jobOn([roundedRectangle(20, 12, 1.5)], {});
  const shape = jobOn([angleShape(12, 5)], {});
  const own = relief.corners === 'conical' ? job : shape;
  const files = createPipeline().files({
    ...own,
    relief: { ...newRelief, ...relief },
    output: { ...own.output, unit, style },
  });
  if (!files.ok) throw new Error(files.problem.what);
  const file = files.value.find(({ name }) => name.includes('die') && name.endsWith('.nc'));
  if (!file) throw new Error('no program');
  return file.text;
}

describe.skipIf(rs274().missing)(
  'programs of a leaning wire, by our reader and by the RS274/NGC interpreter',
  () => {
    for (const kind of ['land and relief', 'one tapered cut'] as const) {
      for (const corners of ['conical', 'constant radius'] as const) {
        for (const [unit, style] of [
          ['mm', neutralStyle],
          ['inch', neutralStyle],
          ['mm', rs274Style],
          ['inch', rs274Style],
        ] as const) {
          it(`${kind}, ${corners}, ${unit}, ${style.name} style: the same places of all four axes`, () => {
            const text = dieProgram({ kind, corners }, unit, style);
            const ours = read(text, unit === 'inch' ? 25.4 : 1, style);
            const theirs = interpreted(text);
            expect(theirs).toHaveLength(ours.length);
            // It prints 4 decimals.
            for (const [i, move] of ours.entries())
              for (const [axis, value] of move.entries()) expect(theirs[i]?.[axis]).toBeCloseTo(value, 3.9);
            expect(Math.max(...ours.map(([, , u]) => u))).toBeGreaterThan(0);
            const last = ours.at(-1);
            expect(last?.slice(2)).toEqual([0, 0]);
          });
        }
      }
    }
  },
);

// Our own reader of the tests, written from the words of ISO 6983-1 and its secondary axes (ISO 841) alone.
describe.each(['land and relief', 'one tapered cut'] as const)('the neutral program of %s', (kind) => {
  for (const corners of ['conical', 'constant radius'] as const) {
    it(`${corners}: says every place of both ends of the wire, to half a last decimal`, () => {
      const job = jobOn([angleShape(12, 5)], { relief: { ...newRelief, kind, corners, angleDeg: 2 } });
      const pipeline = createPipeline();
      const [plan, files] = [pipeline.plan(job), pipeline.files(job)];
      if (!plan.ok || !files.ok) throw new Error('no plan');
      const text = files.value.find(({ name }) => /die.*\.nc$/.test(name))?.text ?? '';
      const { moves } = plainReader(text);
      const passes = plan.value.pairs[0]?.die.cuts[0]?.passes ?? [];
      const leaning = passes.filter(({ lean }) => lean).flatMap(({ main, tabs }) => [...main, ...tabs]);
      expect(leaning.length).toBeGreaterThan(0);
      for (const run of leaning) {
        const lower = [...run.leadIn, ...run.cut, ...run.leadOut];
        const upper = run.upper ? [...run.upper.leadIn, ...run.upper.cut, ...run.upper.leadOut] : [];
        expect(upper).toHaveLength(lower.length);
        lower.forEach(({ x, y }, i) => {
          const [u, v] = [(upper[i]?.x ?? NaN) - x, (upper[i]?.y ?? NaN) - y];
          const near = (a: number, b: number) => Math.abs(a - b) <= 0.0000051;
          const said = moves.some(
            ({ to, lean }) => near(to.x, x) && near(to.y, y) && near(lean.x, u) && near(lean.y, v),
          );
          expect(said, `${x} ${y} ${u} ${v}`).toBe(true);
        });
      }
      // Arcs only where U and V stand still: no control is trusted with two radii at once.
      moves.forEach(({ kind: way, lean }, i) => {
        if (way === 'arc') expect(lean).toEqual(moves[i - 1]?.lean);
      });
      expect(moves.at(-1)?.lean).toEqual({ x: 0, y: 0 });
    });
  }
});
