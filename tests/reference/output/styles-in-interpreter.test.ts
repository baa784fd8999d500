import { describe, expect, it } from 'vitest';
import { exampleStyle } from '../../../core/example-style';
import { newJob, type Job } from '../../../core/job';
import { neutralStyle, rs274Style } from '../../../core/neutral-style';
import type { Member } from '../../../core/plan';
import type { ProgramStyle } from '../../../core/program-style';
import { contourMoves, distanceToMoves, pointsAlong } from '../../support/move-distance';
import { rs274 } from '../../support/outside-tool';
import { programOf } from '../../support/own-blocks';
import { exampleParts, planOf } from '../../support/plan-of';
import { readProgram } from '../../support/read-program';
import { plainMove, runRs274 } from '../../support/rs274';
import { unstyled } from '../../support/unstyled';

// Outside source: LinuxCNC's interpreter of RS274/NGC (NIST IR 6556) runs the text as it is written, no word exchanged.
const { missing } = rs274();

const sparing: ProgramStyle = {
  ...rs274Style,
  name: 'sparing',
  numbers: {
    mmDecimals: 4,
    inchDecimals: 5,
    point: 'where needed',
    trailingZeros: false,
    leadingZero: false,
  },
  twoDigitWords: false,
  leaveOut: 'motion words and coordinates',
  spaces: false,
  lineNumbers: null,
  lineEnd: 'CRLF',
  arcs: 'radius',
};
const coarse: ProgramStyle = {
  ...rs274Style,
  name: 'coarse',
  numbers: { ...neutralStyle.numbers, mmDecimals: 3, inchDecimals: 4 },
};
const styles = [rs274Style, exampleStyle, sparing, coarse];

function example(style: ProgramStyle, output: Pick<Job['output'], 'unit' | 'program'>) {
  const parts = exampleParts(output);
  const job = { ...parts.job, passes: newJob('', '').passes, output: { ...output, style } };
  const plan = planOf({ ...parts, job });
  return { job, plan, members: plan.pairs.flatMap(({ die, punch }) => [die, punch]) };
}

const offsetsOf = (member: Member, { offsets }: ProgramStyle) =>
  Object.fromEntries(
    member.cuts.flatMap(({ passes }) => passes.map(({ pass, offset }) => [offsets.first + pass, offset])),
  );

describe.skipIf(missing)('program styles in the RS274/NGC interpreter', () => {
  describe.each(styles.map((style) => [style.name, style] as const))('%s', (_, style) => {
    it.each(['mm', 'inch'] as const)(
      'the wire-centre programs make the moves that were meant, in %s',
      (unit) => {
        const { job, plan, members } = example(style, { unit, program: 'wire centre' });
        const last = 10 ** -(unit === 'inch' ? style.numbers.inchDecimals : style.numbers.mmDecimals);
        for (const member of members) {
          const text = programOf(member, plan, job);
          const own = readProgram(unstyled(text, style, unit)).moves;
          const run = runRs274(text);
          expect(run.error).toBeNull();
          expect(run.ended).toBe(true);
          expect(run.unit).toBe(unit);
          expect(run.stops).toBe(2);
          expect(run.moves).toHaveLength(own.length);
          own.forEach((move, index) => {
            const made = run.moves[index];
            expect(made?.type).toBe(move.kind);
            // The interpreter answers with 4 decimals.
            expect(Math.abs((made?.to[0] ?? NaN) - move.to.x)).toBeLessThanOrEqual(0.000051);
            expect(Math.abs((made?.to[1] ?? NaN) - move.to.y)).toBeLessThanOrEqual(0.000051);
            if (!move.centre) return;
            expect(made?.counterClockwise).toBe(move.counterClockwise);
            expect(Math.abs((made?.centre?.[0] ?? NaN) - move.centre.x)).toBeLessThan(0.000051 + 2 * last);
            expect(Math.abs((made?.centre?.[1] ?? NaN) - move.centre.y)).toBeLessThan(0.000051 + 2 * last);
          });
        }
      },
    );

    it.each(['mm', 'inch'] as const)('the compensated programs cut every loop, in %s', (unit) => {
      const { job, plan, members } = example(style, { unit, program: 'compensated' });
      const perUnit = unit === 'inch' ? 25.4 : 1;
      const last = 10 ** -(unit === 'inch' ? style.numbers.inchDecimals : style.numbers.mmDecimals);
      for (const member of members) {
        const run = runRs274(programOf(member, plan, job), offsetsOf(member, style));
        expect(run.error).toBeNull();
        // Rounding of ends and centres by the style, and of the interpreter's answer, in both coordinates.
        const limit = perUnit * (3 * 0.00005 + 3 * last);
        const moves = run.moves
          .filter((move) => move.type !== 'rapid')
          .map((move) => plainMove(move, perUnit));
        for (const { loop } of member.cuts.flatMap(({ passes }) => passes)) {
          for (const point of pointsAlong(loop)) expect(distanceToMoves(point, moves)).toBeLessThan(limit);
        }
        const contour = member.designed.flatMap(contourMoves);
        const nearest = Math.min(...member.cuts.flatMap(({ passes }) => passes.map(({ offset }) => offset)));
        for (const { from, to } of moves) {
          for (const end of [from, to])
            expect(distanceToMoves(end, contour)).toBeGreaterThan(nearest - limit);
        }
      }
    });
  });
});
