import { describe, expect, it } from 'vitest';
import { jobOnDrawing } from '../../core/job-file';
import type { Job } from '../../core/job';
import { createPipeline } from '../../core/pipeline';
import { bytes, circle, dxf, line, square, type Groups } from './drawing/drawn';

/** A plate whose edges meet 0.03 mm apart, and a disc: with a gap tolerance of 0.05 the plate closes and goes first. */
const plate: Groups = [
  ...[...line(0, 0, 40, 0), ...line(40, 0, 40, 30), ...line(40, 30.03, 0, 30), ...line(0, 30, 0, 0)],
  ...[...circle(20, 15, 4), ...circle(100, 0, 10)],
];
const job = (changes: Partial<Job> = {}, drawing: Partial<Job['drawing']> = {}): Job => {
  const fresh = jobOnDrawing('part.dxf', bytes(dxf({ entities: plate })));
  return { ...fresh, ...changes, drawing: { ...fresh.drawing, ...drawing } };
};
const followed = (before: Job, now: Job) => createPipeline().followed(before, now);

describe('what was chosen for single contours, when the drawing is read differently', () => {
  const chosen: Partial<Job> = {
    uses: { c1: 'pierce', c2: 'leave out' },
    sizeShifts: { c1: 0.02 },
    cuts: { 'pierce-c1-die-1': { tabLength: 3 } as unknown as Job['cuts'][string] },
  };

  it('stays on the same contours: the disc is first while the plate is open, then last', () => {
    const { job: now, lost } = followed(job(chosen), job(chosen, { gapTolerance: 0.05 }));
    expect(lost).toEqual([]);
    expect(now.sizeShifts).toEqual({ c3: 0.02 });
    expect(now.uses).toEqual({ c3: 'pierce', c2: 'leave out' });
    expect(Object.keys(now.cuts)).toEqual(['pierce-c3-die-1']);
  });

  it('in another unit too, with the places of corners', () => {
    const square10 = bytes(dxf({ entities: [...square(0, 0, 10), ...square(50, 0, 20)] }));
    const before = jobOnDrawing('two.dxf', square10);
    const corner = { contourId: 'c2', x: 10, y: 10, inside: null, outside: null, path: null };
    const now: Job = {
      ...before,
      corners: { ...before.corners, exceptions: [corner] },
      drawing: { ...before.drawing, unit: 'inch' },
    };
    expect(followed({ ...now, drawing: before.drawing }, now).job.corners.exceptions).toMatchObject([
      { contourId: 'c2', x: 254, y: 254 },
    ]);
  });

  it('goes, and is told, where its contour is no longer there', () => {
    const onPlate: Partial<Job> = { sizeShifts: { c1: 0.05, c3: 0.01 } };
    const { job: now, lost } = followed(job(onPlate, { gapTolerance: 0.05 }), job(onPlate));
    expect(lost).toEqual(['c1']);
    expect(now.sizeShifts).toEqual({ c1: 0.01 });
  });

  it('is the very same job where nothing is chosen or nothing changes', () => {
    const plain = job({}, { gapTolerance: 0.05 });
    expect(followed(job(), plain).job).toBe(plain);
    const same = job(chosen, { gapTolerance: 0.006 });
    expect(followed(job(chosen), same).job).toBe(same);
  });
});
