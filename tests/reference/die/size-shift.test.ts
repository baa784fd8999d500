import { describe, expect, it } from 'vitest';
import { contourArea } from '../../../core/geometry/contour-measures';
import { jobOnDrawing, readJobFile, writeJobFile } from '../../../core/job-file';
import type { Job } from '../../../core/job';
import { writeSummary } from '../../../core/output/write-summary';
import { createPipeline } from '../../../core/pipeline';
import type { Plan } from '../../../core/plan';
import { bytes, circle, dxf, polyline, square, xy, type Groups } from '../../core/drawing/drawn';

// Sources: the member that gives the size takes the shift, the other keeps the clearance from it (which member that is:
// Groover, Fundamentals of Modern Manufacturing, chapter 20); sizes by the geometry of concentric circles.
const base = jobOnDrawing('disc.dxf', bytes(dxf({ entities: circle(0, 0, 15) })));
const clearance = { rule: 'typed', perSide: 0.06 } as const;

function planOf(changes: Partial<Job>, entities?: Groups): Plan {
  const job = entities ? jobOnDrawing('part.dxf', bytes(dxf({ entities }))) : base;
  const plan = createPipeline().plan({ ...job, clearance, ...changes });
  if (!plan.ok) throw new Error(plan.problem.what);
  return plan.value;
}

const diameters = ({ pairs }: Plan) =>
  pairs.flatMap(({ die, punch }) =>
    [die, punch].map(({ designed }) => 2 * Math.sqrt(contourArea(designed[0] ?? []) / Math.PI)),
  );
const codes = ({ findings }: Plan) => findings.map(({ weight, code }) => `${weight} ${code}`);

describe('size shift before clearance', () => {
  it('blank: the die takes it, the punch follows at the clearance', () => {
    const [die, punch] = diameters(planOf({ sizeShifts: { c1: 0.02 } }));
    expect(die).toBeCloseTo(30.04, 9);
    expect(punch).toBeCloseTo(29.92, 9);
  });

  it('pierce: the punch takes it, the die opening follows; less than zero makes smaller', () => {
    const [die, punch] = diameters(planOf({ sizeShifts: { c1: -0.01 }, uses: { c1: 'pierce' } }));
    expect(punch).toBeCloseTo(29.98, 9);
    expect(die).toBeCloseTo(30.1, 9);
  });

  it('the clearance of a shifted contour with corners is even all round', () => {
    const corners = polyline(true, xy('0,0 20,0 20,12 12,12 12,6 6,6 6,12 0,12'));
    const [pair] = planOf({ sizeShifts: { c1: 0.03 }, wire: { diameter: 0.02 } }, corners).pairs;
    expect(pair?.fit?.least).toBeGreaterThan(0.06 - 1e-6);
  });

  it('each contour has its own; the others stay as drawn', () => {
    const two = [...circle(0, 0, 15), ...circle(40, 0, 5)];
    expect(diameters(planOf({ sizeShifts: { c2: 0.05 } }, two)).map((d) => Number(d.toFixed(6)))).toEqual([
      30, 29.88, 10.1, 9.98,
    ]);
  });

  it('is told on the summary, saved with the job, and none where an older job has no field for it', () => {
    const job = { ...base, clearance, sizeShifts: { c1: 0.02 } };
    expect(writeSummary(planOf({ sizeShifts: job.sizeShifts }), job)).toMatch(
      /Size shift +c1 \+0\.02 mm \(0\.00079 in\); per side/,
    );
    expect(readJobFile(writeJobFile(job))).toEqual({ ok: true, value: job });
    const { sizeShifts: _none, ...older } = base;
    expect(readJobFile(JSON.stringify(older))).toEqual({ ok: true, value: base });
  });

  it('what swallows, splits or closes a feature is a stop', () => {
    expect(codes(planOf({ sizeShifts: { c1: -15 } }))).toContain('stop size-shift-too-large');
    const neck = polyline(
      true,
      xy('0,0 10,0 10,4.9 10.5,4.9 10.5,0 20,0 20,10 10.5,10 10.5,5.1 10,5.1 10,10 0,10'),
    );
    expect(codes(planOf({ sizeShifts: { c1: -0.2 } }, neck))).toContain('stop size-shift-too-large');
    const slit = polyline(true, xy('0,0 20,0 20,10 10.1,10 10.1,4 10,4 10,10 0,10'));
    expect(codes(planOf({ sizeShifts: { c1: 0.06 } }, slit))).toContain('stop size-shift-too-large');
    expect(codes(planOf({ sizeShifts: { c1: 0.02 } }, slit))).not.toContain('stop size-shift-too-large');
  });
});

describe('a stated tolerance is offered as a size shift', () => {
  const level = (text: string): Groups => [
    ...[0, 'DIMENSION', 8, 'DIM', 2, '*D1', 10, 25, 20, -10, 11, 12, 21, -10, 70, 32],
    ...[1, text, 13, 0, 23, 0, 14, 25, 24, 0, 50, 0],
  ];
  const found = (text: string, sizeShifts: Record<string, number> = {}) =>
    planOf({ sizeShifts }, [...square(0, 0, 25), ...level(text)]).findings.filter(
      ({ code }) => code === 'tolerance-offside',
    );

  it('drawn at its limit: a decision; the shift offered settles it', () => {
    const [finding] = found('25 +0.1/0');
    expect(finding).toMatchObject({ weight: 'decide', contourId: 'c1' });
    expect(finding?.message).toMatch(/its middle is 25\.05 mm .* as drawn it is 0\.05 mm/);
    expect(finding?.cures[0]).toMatchObject({ kind: 'size-shift', contourId: 'c1' });
    // 25 + 2 × 0.025 = 25.05.
    expect(finding?.cures[0]).toHaveProperty('sizeShift', expect.closeTo(0.025, 12));
    expect(found('25 +0.1/0', { c1: 0.025 })).toEqual([]);
  });

  it('inside its limits but not in the middle: a note', () => {
    expect(found('25 +0.1/-0.02').map(({ weight }) => weight)).toEqual(['note']);
  });

  it('an even one asks nothing, until a shift takes the contour off its middle', () => {
    expect(found('25%%p0.05')).toEqual([]);
    expect(found('25%%p0.05', { c1: 0.01 })[0]?.message).toMatch(
      /with a size shift of 0\.01 mm .* is 0\.02 mm/,
    );
  });
});
