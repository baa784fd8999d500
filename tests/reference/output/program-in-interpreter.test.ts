import { describe, expect, it } from 'vitest';
import { newJob } from '../../../core/job';
import type { Member } from '../../../core/plan';
import { rs274 } from '../../support/outside-tool';
import { programOf } from '../../support/own-blocks';
import { exampleParts, planOf } from '../../support/plan-of';
import { contourMoves, distanceToMoves, pointsAlong } from '../../support/move-distance';
import { readProgram } from '../../support/read-program';
import { plainMove, type Rs274Move } from '../../support/rs274';
import { runProgram } from '../../support/run-program';

// Outside source: LinuxCNC's interpreter of RS274/NGC (NIST IR 6556), which answers with 4 decimals.
const { missing } = rs274();
const lastDecimal = 0.00005 + 1e-9;

function example(unit: 'mm' | 'inch', program: 'wire centre' | 'compensated') {
  const parts = exampleParts({ unit, program });
  const job = { ...parts.job, passes: newJob('', '').passes };
  const plan = planOf({ ...parts, job });
  const pair = plan.pairs[0];
  if (!pair) throw new Error('no pair');
  return { job, plan, members: { die: pair.die, punch: pair.punch } };
}

/** Offset table of the member, mm by entry: what the header tells the operator to set. */
const offsets = (member: Member) =>
  Object.fromEntries(member.cuts.flatMap((cut) => cut.passes.map((pass) => [pass.pass + 1, pass.offset])));

/** Runs of moves with the offset on. */
function compensatedRuns(moves: readonly Rs274Move[]): Rs274Move[][] {
  const runs: Rs274Move[][] = [];
  moves.forEach((move, index) => {
    if (move.comp === 'off') return;
    if (moves[index - 1]?.comp === 'off') runs.push([]);
    runs.at(-1)?.push(move);
  });
  return runs;
}

describe.skipIf(missing)('programs in the RS274/NGC interpreter', () => {
  describe.each(['mm', 'inch'] as const)('in %s', (unit) => {
    it.each(['die', 'punch'] as const)('runs the wire-centre program of the %s move by move', (role) => {
      const { job, plan, members } = example(unit, 'wire centre');
      const text = programOf(members[role], plan, job);
      const own = readProgram(text).moves;
      const run = runProgram(text);
      expect(run.error).toBeNull();
      expect(run.ended).toBe(true);
      expect(run.unit).toBe(unit);
      expect(run.moves).toHaveLength(own.length);
      own.forEach((move, index) => {
        const done = run.moves[index];
        expect(done?.type).toBe(move.kind);
        expect(Math.abs((done?.to[0] ?? NaN) - move.to.x)).toBeLessThanOrEqual(lastDecimal);
        expect(Math.abs((done?.to[1] ?? NaN) - move.to.y)).toBeLessThanOrEqual(lastDecimal);
        if (move.centre) {
          expect(Math.abs((done?.centre?.[0] ?? NaN) - move.centre.x)).toBeLessThanOrEqual(lastDecimal);
          expect(Math.abs((done?.centre?.[1] ?? NaN) - move.centre.y)).toBeLessThanOrEqual(lastDecimal);
          expect(done?.counterClockwise).toBe(move.counterClockwise);
        }
      });
      expect(run.stops).toBe(2);
    });

    it.each(['die', 'punch'] as const)('makes the wire-centre path of the %s from its contour', (role) => {
      const { job, plan, members } = example(unit, 'compensated');
      const member = members[role];
      const run = runProgram(programOf(member, plan, job), offsets(member));
      expect(run.error).toBeNull();
      const perUnit = unit === 'inch' ? 25.4 : 1;
      // Rounding of the contour's ends, and of the interpreter's answer in both coordinates.
      const limit = 3 * perUnit * lastDecimal;
      const runs = compensatedRuns(run.moves);
      const passes = member.cuts.flatMap((cut) => cut.passes);
      expect(runs).toHaveLength(2 * passes.length);
      passes.forEach((pass, index) => {
        // Main run and tab of a pass: nothing off its loop, and the whole loop covered, the tab's ends too.
        const own = [runs[index] ?? [], runs[index + passes.length] ?? []];
        const loop = contourMoves(pass.loop);
        for (const { to } of own.flat()) {
          const at = { x: to[0] * perUnit, y: to[1] * perUnit };
          expect(distanceToMoves(at, loop)).toBeLessThan(limit);
        }
        // The first move of a run is the lead-in.
        const cut = own.flatMap((moves) => moves.slice(1)).map((move) => plainMove(move, perUnit));
        for (const point of pointsAlong(pass.loop)) expect(distanceToMoves(point, cut)).toBeLessThan(limit);
      });
    });
  });

  it('refuses an arc whose radii differ: the interpreter does check what it runs', () => {
    const run = runProgram(
      '%\nN1 G71\nN2 G00 X0.0000 Y0.0000\nN3 G03 X1.0000 Y1.0000 I0.0000 J1.1000 F4.0\nN4 M30\n',
    );
    expect(run.error).toContain('Radius');
  });
});
