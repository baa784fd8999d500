import { readFileSync, readdirSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { PlainMove as OurMove } from '../../../core/check/beside-move';
import { readProgram } from '../../../core/check/read-program';
import { wirePath } from '../../../core/check/wire-path';
import { jobOnDrawing } from '../../../core/job-file';
import { writeProgram } from '../../../core/output/write-program';
import { createPipeline } from '../../../core/pipeline';
import { blockWork } from '../../../core/wire/block-work';
import { distanceToMoves, pointsOfMove, type PlainMove } from '../../support/move-distance';
import { rs274 } from '../../support/outside-tool';
import { plainMove } from '../../support/rs274';
import { runProgram } from '../../support/run-program';

// Outside source: LinuxCNC's interpreter of RS274/NGC (NIST IR 6556) and our own reader say the same of every program
// of every sample. The interpreter answers with 4 decimals.
const { missing } = rs274();
const folder = new URL('../../../samples/', import.meta.url);
const drawings = readdirSync(folder).filter((name) => name.endsWith('.dxf'));

const perUnit = { mm: 1, inch: 25.4 } as const;
const cases = [
  ['wire centre', 'mm'],
  ['wire centre', 'inch'],
  ['compensated', 'mm'],
  ['compensated', 'inch'],
] as const;

const plain = ({ from, to, centre, turn }: OurMove): PlainMove => ({
  from,
  to,
  centre,
  counterClockwise: turn > 0,
});

describe.skipIf(missing)('programs of the samples, by our reader and by the RS274/NGC interpreter', () => {
  expect(drawings.length).toBeGreaterThanOrEqual(4);
  describe.each(drawings)('%s', (drawing) => {
    const start = jobOnDrawing(drawing, new Uint8Array(readFileSync(new URL(drawing, folder))));
    const pipeline = createPipeline();
    it.each(cases)('%s, %s: the same moves within the last decimal', (program, unit) => {
      const job = { ...start, output: { ...start.output, unit, program } };
      const planned = pipeline.plan(job);
      if (!planned.ok) throw new Error(planned.problem.what);
      const mm = perUnit[unit];
      for (const block of planned.value.blocks) {
        const text = writeProgram(block, planned.value, job);
        const passes = blockWork(planned.value, block).flatMap(({ cut }) => cut.passes);
        const offsets = new Map(passes.map((pass) => [pass.pass + 1, pass.offset]));
        const reading = readProgram(text);
        if (!reading.ok) throw new Error(reading.problem.what);
        const theirs = runProgram(text, Object.fromEntries(offsets));
        expect(theirs.error).toBeNull();
        expect(reading.value.unit).toBe(theirs.unit);
        expect(reading.value.pauses.filter(({ kind }) => kind === 'stop')).toHaveLength(theirs.stops);
        const path = wirePath(reading.value, offsets);
        expect(path.faults).toEqual([]);

        if (program === 'wire centre') {
          const limit = 0.00005 + 1e-9;
          expect(path.moves).toHaveLength(theirs.moves.length);
          path.moves.forEach((move, index) => {
            const their = theirs.moves[index];
            if (!their) throw new Error('no such move');
            expect(reading.value.moves[index]?.kind).toBe(their.type);
            expect(Math.abs(move.to.x / mm - their.to[0])).toBeLessThanOrEqual(limit);
            expect(Math.abs(move.to.y / mm - their.to[1])).toBeLessThanOrEqual(limit);
            if (!move.centre || !their.centre) return;
            expect(Math.abs(move.centre.x / mm - their.centre[0])).toBeLessThanOrEqual(limit);
            expect(Math.abs(move.centre.y / mm - their.centre[1])).toBeLessThanOrEqual(limit);
            expect(move.turn > 0).toBe(their.counterClockwise);
          });
          continue;
        }
        // Where the offset comes on controls may differ: compared is what is cut with it, as a path.
        const limit = 3 * 0.0001 * mm;
        const isCut = (_: unknown, index: number, all: readonly { isOn: boolean }[]) =>
          all[index]?.isOn === true && all[index - 1]?.isOn === true;
        const their = theirs.moves
          .map((move) => ({ isOn: move.comp !== 'off', move }))
          .filter(isCut)
          .map(({ move }) => plainMove(move, mm));
        const own = path.moves
          .map((move) => ({ isOn: reading.value.moves[move.move]?.side !== 'off', move }))
          .filter(isCut)
          .map(({ move }) => plain(move));
        for (const point of their.flatMap((move) => pointsOfMove(move, 0.4))) {
          expect(distanceToMoves(point, own)).toBeLessThan(limit);
        }
        for (const point of own.flatMap((move) => pointsOfMove(move, 0.4))) {
          expect(distanceToMoves(point, their)).toBeLessThan(limit);
        }
      }
    });
  });
});
