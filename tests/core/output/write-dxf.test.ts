import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Piece, RawDrawing } from '../../../core/drawing/raw-drawing';
import { readDrawing } from '../../../core/drawing/read-drawing';
import type { Contour } from '../../../core/geometry/contour';
import { writeDxf } from '../../../core/output/write-dxf';
import { exampleParts, planOf } from '../../support/plan-of';

function readBack(text: string): RawDrawing {
  const reply = readDrawing(new TextEncoder().encode(text));
  if (!reply.ok) throw new Error(reply.problem.what);
  return reply.value;
}

/** Each segment's ends and bulge, scaled to mm. */
function segments(piece: Piece, mm: number): number[][] {
  return piece.parts.flatMap((part) => {
    if (part.type !== 'chain') throw new Error(`A ${part.type} where lines and arcs were written`);
    return part.chain.slice(0, -1).map(({ x, y, bulge }, i) => {
      const to = part.chain[i + 1] ?? { x: NaN, y: NaN };
      return [x * mm, y * mm, to.x * mm, to.y * mm, bulge];
    });
  });
}

function segmentsOf(contour: Contour): number[][] {
  return contour.map(({ x, y, bulge }, index) => {
    const to = contour[(index + 1) % contour.length] ?? { x, y };
    return [x, y, to.x, to.y, bulge];
  });
}

describe('writeDxf and readDrawing', () => {
  // Common practice: what is written must be what is read; a double rounded at 1 m is 1e-13 mm off.
  it.each([
    ['mm', 1],
    ['inch', 25.4],
  ] as const)('read back to the same contours and paths, in %s', (unit, mm) => {
    const size = fc.record({
      width: fc.double({ min: 5, max: 2000, noNaN: true }),
      height: fc.double({ min: 5, max: 2000, noNaN: true }),
      radius: fc.double({ min: 0.3, max: 1.4, noNaN: true }),
    });
    fc.assert(
      fc.property(size, (given) => {
        const parts = { ...exampleParts({ unit }), ...given };
        const plan = planOf(parts);
        const read = readBack(writeDxf(plan, parts.job));
        expect(read.statedUnit).toBe(unit);
        expect(read.damage).toEqual([]);
        for (const member of plan.pairs.flatMap((pair) => [pair.die, pair.punch])) {
          const [designed] = member.designed;
          const loop = member.cuts[0]?.passes[0]?.loop;
          for (const [layer, contour] of [
            [member.id, designed],
            [`${member.id}-rough`, loop],
          ] as const) {
            const found = read.pieces.filter((piece) => piece.layer === layer);
            expect(found).toHaveLength(1);
            expect(found[0]?.closed).toBe(true);
            const back = found.flatMap((piece) => segments(piece, mm));
            const wanted = segmentsOf(contour ?? []);
            expect(back).toHaveLength(wanted.length);
            const off = back.flatMap((values, i) =>
              values.map((value, k) => Math.abs(value - (wanted[i]?.[k] ?? NaN))),
            );
            expect(Math.max(...off)).toBeLessThan(1e-9);
          }
        }
      }),
      { numRuns: 25 },
    );
  });
});
