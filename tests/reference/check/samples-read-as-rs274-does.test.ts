import { readFileSync, readdirSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { blockProgram } from '../../../core/block-program';
import type { PlainMove as OurMove } from '../../../core/check/beside-move';
import { proveProgram } from '../../../core/check/prove-program';
import { readProgram } from '../../../core/check/read-program';
import { wirePath } from '../../../core/check/wire-path';
import { jobOnDrawing } from '../../../core/job-file';
import { createPipeline } from '../../../core/pipeline';
import { shippedStyles } from '../../../core/shipped-styles';
import { distanceToMoves, pointsOfMove, type PlainMove } from '../../support/move-distance';
import { rs274 } from '../../support/outside-tool';
import { plainMove, type Rs274Move } from '../../support/rs274';
import { runProgram } from '../../support/run-program';

// Outside source: LinuxCNC's interpreter of RS274/NGC (NIST IR 6556) and our own reader say the same of every program
// of every sample in every style that is shipped, and the proof passes it. The interpreter answers with 4 decimals.
const { missing } = rs274();
const folder = new URL('../../../samples/', import.meta.url);
const drawings = readdirSync(folder).filter((name) => name.endsWith('.dxf'));
const lastDecimal = 0.0001;

const perUnit = { mm: 1, inch: 25.4 } as const;
const cases = Object.values(shippedStyles).flatMap((style) =>
  (['wire centre', 'compensated'] as const).flatMap((kind) =>
    (['mm', 'inch'] as const).map((unit) => ({ name: `${style.name}, ${kind}, ${unit}`, style, kind, unit })),
  ),
);

describe.skipIf(missing)('programs of the samples, by our reader and by the RS274/NGC interpreter', () => {
  expect(drawings.length).toBeGreaterThanOrEqual(4);
  expect(cases.length).toBeGreaterThanOrEqual(12);
  describe.each(drawings)('%s', (drawing) => {
    const job = jobOnDrawing(drawing, new Uint8Array(readFileSync(new URL(drawing, folder))));
    const planned = createPipeline().plan(job);
    if (!planned.ok) throw new Error(planned.problem.what);
    const plan = planned.value;
    const members = plan.pairs.flatMap(({ die, punch }) => [die, punch]);

    it.each(cases)('$name: the same moves within the last decimal, and proved', ({ style, kind, unit }) => {
      for (const block of plan.blocks) {
        const program = blockProgram(block, plan, { ...job, output: { style, unit, program: kind } });
        const { text, dialect, offsets } = program;
        const reading = readProgram(text, dialect);
        if (!reading.ok) throw new Error(`${reading.problem.what} (${reading.problem.where})`);
        const path = wirePath(reading.value, offsets);
        expect(path.faults).toEqual([]);

        const theirs = runProgram(text, Object.fromEntries(offsets));
        expect(theirs.error).toBeNull();
        expect(theirs.unit).toBe(reading.value.unit);
        expect(theirs.stops).toBe(reading.value.pauses.filter((pause) => pause.kind === 'stop').length);
        const sides = reading.value.moves.map(({ side }) => side);
        const own = path.moves.map((move) => ({ move: plain(move), isOn: sides[move.move] !== 'off' }));
        if (kind === 'wire centre')
          expectSameMoves(
            own.map(({ move }) => move),
            theirs.moves,
            perUnit[unit],
          );
        else expectSamePath(own, theirs.moves, perUnit[unit]);

        const cut = members.filter(({ id }) => block.memberIds.includes(id));
        const proof = proveProgram({
          ...program,
          members: cut,
          reach: plan.reach[block.part],
        });
        expect(proof.faults).toEqual([]);
        for (const { passed } of proof.proofs.values()) expect(passed).toBe(true);
      }
    });
  });
});

const plain = ({ from, to, centre, turn }: OurMove): PlainMove => ({
  from,
  to,
  centre,
  counterClockwise: turn > 0,
});

function expectSameMoves(own: readonly PlainMove[], theirs: readonly Rs274Move[], mm: number): void {
  const limit = lastDecimal / 2 + 1e-9;
  expect(own).toHaveLength(theirs.length);
  own.forEach((move, index) => {
    const their = theirs[index];
    if (!their) throw new Error('no such move');
    expect(Math.abs(move.to.x / mm - their.to[0])).toBeLessThanOrEqual(limit);
    expect(Math.abs(move.to.y / mm - their.to[1])).toBeLessThanOrEqual(limit);
    expect(move.centre === null).toBe(their.centre === null);
    if (!move.centre || !their.centre) return;
    expect(Math.abs(move.centre.x / mm - their.centre[0])).toBeLessThanOrEqual(limit);
    expect(Math.abs(move.centre.y / mm - their.centre[1])).toBeLessThanOrEqual(limit);
    expect(move.counterClockwise).toBe(their.counterClockwise);
  });
}

/** Where the offset comes on controls may differ: compared is what is cut with it, as a path, both ways. */
function expectSamePath(
  all: readonly { move: PlainMove; isOn: boolean }[],
  theirs: readonly Rs274Move[],
  mm: number,
): void {
  const limit = 3 * lastDecimal * mm;
  const own = cutMoves(all);
  const their = cutMoves(theirs.map((move) => ({ move: plainMove(move, mm), isOn: move.comp !== 'off' })));
  for (const point of their.flatMap((move) => pointsOfMove(move, 0.4))) {
    expect(distanceToMoves(point, own)).toBeLessThan(limit);
  }
  for (const point of own.flatMap((move) => pointsOfMove(move, 0.4))) {
    expect(distanceToMoves(point, their)).toBeLessThan(limit);
  }
}

/** All but the moves along which the offset comes on. */
const cutMoves = (all: readonly { move: PlainMove; isOn: boolean }[]): PlainMove[] =>
  all.filter(({ isOn }, index) => isOn && all[index - 1]?.isOn === true).map(({ move }) => move);
