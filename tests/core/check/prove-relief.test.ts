import { describe, expect, it } from 'vitest';
import { blockProgram } from '../../../core/block-program';
import { movesInPlane } from '../../../core/check/moves-in-plane';
import { proveProgram } from '../../../core/check/prove-program';
import { readProgram } from '../../../core/check/read-program';
import { wirePath } from '../../../core/check/wire-path';
import { newRelief, type ReliefSettings } from '../../../core/die/relief-rules';
import type { Contour } from '../../../core/geometry/contour';
import { createPipeline } from '../../../core/pipeline';
import { jobOn } from '../../support/dxf-of';
import { intendedOf } from '../../support/intended-of';
import { contourMoves, distanceToMoves, pointsOfMove } from '../../support/move-distance';
import { angleShape, circle, polygon, roundedRectangle, roundedSlot } from '../../support/shapes';

function relieved(shape: Contour, relief: Partial<ReliefSettings>, decimals = 5, unit: 'mm' | 'inch' = 'mm') {
  const job = jobOn([shape]);
  const { style } = job.output;
  const numbers = { ...style.numbers, mmDecimals: decimals, inchDecimals: Math.max(4, decimals) };
  const own = {
    ...job,
    relief: { ...newRelief, ...relief },
    output: { ...job.output, unit, style: { ...style, numbers } },
  };
  const plan = createPipeline().plan(own);
  if (!plan.ok) throw new Error(plan.problem.what);
  return { job: own, plan: plan.value };
}

const shapes: Readonly<Record<string, Contour>> = {
  'an L with a sharp outside corner': angleShape(12.0004, 5.0003),
  'a rounded rectangle': roundedRectangle(20, 10, 1),
  'a wedge of 31°, 59° and 90°': polygon([0, 0], [20, 0], [20, 12]),
  'a circle': circle(5),
  'a slot with round ends': roundedSlot(12, 2),
};

describe.each(Object.entries(shapes))(
  'the planes of a relief, from the text of its program: %s',
  (_, shape) => {
    for (const kind of ['land and relief', 'one tapered cut'] as const) {
      for (const corners of ['conical', 'constant radius'] as const) {
        it(`${kind}, ${corners}: pass, whatever the decimals and however cones are written`, () => {
          for (const [unit, decimals, arcs] of [
            ['mm', 5, 'chords'],
            ['mm', 5, 'circular'],
            ['mm', 3, 'chords'],
            ['inch', 5, 'chords'],
          ] as const) {
            const { plan } = relieved(shape, { kind, corners, arcs, angleDeg: 1 }, decimals, unit);
            const stops = plan.findings.filter(({ code }) => code.startsWith('proof'));
            expect(stops.map(({ message }) => message)).toEqual([]);
            expect(plan.pairs[0]?.die.relief?.planes).toHaveLength(3);
            expect(plan.pairs[0]?.die.proof.passed).toBe(true);
          }
        });
      }
    }
  },
);

it.each(['land and relief', 'one tapered cut'] as const)(
  '%s: a wrong U or V is found by the sweep alone, where nothing is held against the plan',
  (kind) => {
    const { job, plan } = relieved(angleShape(12, 5), { kind, angleDeg: 2, corners: 'constant radius' });
    const [pair] = plan.pairs;
    const block = plan.blocks.find(({ role }) => role === 'die');
    const relief = pair?.die.relief;
    if (!pair || !block || !relief) throw new Error('no relief');
    const program = blockProgram(block, plan, job);
    const prove = (text: string) => {
      const intended = intendedOf(text);
      if (!intended) throw new Error('no program');
      const { reach } = plan;
      return proveProgram({ ...program, text, intended, members: [pair.die], reach: reach.die });
    };
    const found = (text: string) => {
      const { faults, ofReliefs } = prove(text);
      return faults.length + ofReliefs.length;
    };
    expect(found(program.text)).toBe(0);

    const finishing = program.text.lastIndexOf(kind === 'one tapered cut' ? '(SKIM 2)' : '(RELIEF)');
    const exit = relief.planes.at(-1)?.wall.flatMap(contourMoves) ?? [];
    const missed: string[] = [];
    let harmful = 0;
    for (const [letter, by] of [
      ['U', 0.01],
      ['V', -0.01],
    ] as const) {
      const words = new RegExp(` ${letter}(-?\\d+\\.\\d+)`, 'g');
      for (const word of program.text.slice(finishing).matchAll(words)) {
        const at = finishing + word.index;
        const changed = ` ${letter}${(Number(word[1]) + by).toFixed(5)}`;
        const text = program.text.slice(0, at) + changed + program.text.slice(at + word[0].length);
        if (!cutsWrongly(text.slice(0, finishing), text, exit, relief.levelRadius)) continue;
        harmful++;
        if (found(text) === 0) missed.push(word[0]);
      }
    }
    expect(harmful).toBeGreaterThan(8);
    expect(missed).toEqual([]);
  },
);

/** By slow distances in the exit face: nearer to the wall than the level radius by more than 1 µm, or stock left. */
function cutsWrongly(
  before: string,
  text: string,
  wall: Parameters<typeof distanceToMoves>[1],
  radius: number,
) {
  const reading = readProgram(text);
  if (!reading.ok) return false;
  const first = before.split('\n').length;
  const moves = movesInPlane(wirePath(reading.value, new Map()).moves, 1)
    .filter(({ line, isRapid }) => line > first && !isRapid)
    .map(({ from, to, centre, turn }) => ({ from, to, centre, counterClockwise: turn > 0 }));
  const wire = moves.flatMap((move) => pointsOfMove(move, 0.25));
  const onWall = wall.flatMap((move) => pointsOfMove(move, 0.25));
  const nearest = Math.min(...wire.map((point) => distanceToMoves(point, wall)));
  const farthest = Math.max(...onWall.map((point) => distanceToMoves(point, moves)));
  return nearest < radius - 0.001 || farthest > radius + 0.001;
}
