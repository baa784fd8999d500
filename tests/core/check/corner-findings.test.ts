import { describe, expect, it } from 'vitest';
import { newCorners, type CornerException, type CornerRules } from '../../../core/die/corner-rules';
import type { Finding, FindingCode } from '../../../core/finding';
import { jobSchema, type Job } from '../../../core/job';
import { readJobFile, writeJobFile } from '../../../core/job-file';
import { createPipeline } from '../../../core/pipeline';
import { jobOn } from '../../support/dxf-of';
import { angleShape, polygon } from '../../support/shapes';

const rules = (corners: Partial<CornerRules>): Partial<Job> => ({ corners: { ...newCorners, ...corners } });
const at = (x: number, y: number, own: Partial<CornerException>, contourId = 'c1'): CornerException => ({
  contourId,
  x,
  y,
  inside: null,
  outside: null,
  path: null,
  ...own,
});

function planOf(job: Job) {
  const plan = createPipeline().plan(job);
  if (!plan.ok) throw new Error(plan.problem.what);
  return plan.value;
}
const findingsOf = (job: Job, code: FindingCode): readonly Finding[] =>
  planOf(job).findings.filter((finding) => finding.code === code);

const shape = [angleShape(10, 4)];

describe('what the corners of a job are told by', () => {
  it('an over-size fillet takes the finding of its corner away, and the part gets it', () => {
    expect(findingsOf(jobOn(shape), 'inside-corner')).toHaveLength(5);
    const job = jobOn(shape, rules({ exceptions: [at(10, 0, { inside: { rule: 'radius', radius: 0.5 } })] }));
    expect(findingsOf(job, 'inside-corner')).toHaveLength(4);
    const [changed, ...others] = findingsOf(job, 'corner-changed');
    expect(others).toEqual([]);
    expect(changed?.weight).toBe('decide');
    // r (1 / sin 45° − 1).
    expect(changed?.numbers.map(({ value }) => value)).toEqual([
      1,
      0.5,
      expect.closeTo(0.5 * (Math.SQRT2 - 1), 12),
    ]);
    const plan = planOf(job);
    expect(plan.pairs[0]?.die.proof.passed).toBe(true);
    expect(plan.pairs[0]?.punch.proof.passed).toBe(true);
  });

  it('a rounded punch of a blank leaves the part alone', () => {
    const job = jobOn(shape, rules({ punch: { outside: { rule: 'match' }, inside: { rule: 'as drawn' } } }));
    expect(findingsOf(job, 'corner-changed')).toEqual([]);
    expect(findingsOf(job, 'clearance-uneven').map(({ memberId }) => memberId)).toEqual(['blank-c1-punch']);
  });

  it('the cures of uneven clearance are for the one corner, and for all', () => {
    const [finding] = findingsOf(jobOn(shape), 'clearance-uneven');
    const cure = finding?.cures.find(({ kind }) => kind === 'corner');
    expect(cure).toMatchObject({ contourId: 'c1', side: 'outside', rule: { rule: 'match' } });
    expect(finding?.cures.map(({ kind }) => kind)).toEqual(['corner', 'match-corners', 'section']);
  });

  it('a radius that does not fit stays away, and is a decision', () => {
    const tongue = [polygon([0, 0], [10, 0], [10, 5], [6, 5], [6, 9], [5, 9], [5, 5], [0, 5])];
    const job = jobOn(
      tongue,
      rules({ exceptions: [at(6, 9, { outside: { rule: 'radius', radius: 0.7 } })] }),
    );
    const [finding] = findingsOf(job, 'corner-radius');
    expect(finding).toMatchObject({ weight: 'decide', memberId: 'blank-c1-punch' });
    expect(finding?.numbers[0]?.value).toBeCloseTo(0.7, 12);
    expect(finding?.numbers[1]?.value).toBeCloseTo(0.7, 12);
  });

  it('a choice for a corner that is not there is a decision, with the cure that takes it out', () => {
    const job = jobOn(
      shape,
      rules({
        exceptions: [
          at(7, 0, { path: 'sharp' }),
          at(0, 0, { path: 'sharp' }, 'c9'),
          at(4, 4, { path: 'sharp' }),
        ],
      }),
    );
    const lost = findingsOf(job, 'corner-choice');
    expect(lost.map(({ cures }) => cures[0])).toEqual([
      expect.objectContaining({ kind: 'forget-corner', contourId: 'c1', at: { x: 7, y: 0 } }),
      expect.objectContaining({ kind: 'forget-corner', contourId: 'c9' }),
    ]);
  });

  it('a choice stays with its corner under a size shift', () => {
    const choice = rules({ exceptions: [at(10, 0, { inside: { rule: 'radius', radius: 0.5 } })] });
    for (const sizeShift of [0.05, -0.05]) {
      const job = jobOn(shape, { ...choice, sizeShifts: { c1: sizeShift } });
      expect(findingsOf(job, 'corner-changed')).toHaveLength(1);
      expect(findingsOf(job, 'corner-choice')).toEqual([]);
    }
  });
});

describe('job files from before corners had rules', () => {
  const older = (punchCorners: string, dieCorners: string): string => {
    const { corners: _corners, ...job } = jobOn(shape);
    return JSON.stringify({ ...job, punchCorners, dieCorners });
  };

  it('keep their two words', () => {
    const job = readJobFile(older('match the die', 'as drawn'));
    expect(job.ok && job.value.corners.punch.outside).toEqual({ rule: 'match' });
    expect(job.ok && job.value.corners.die.outside).toEqual({ rule: 'as drawn' });
    const other = readJobFile(older('as drawn', 'match the punch'));
    expect(other.ok && other.value.corners.die.outside).toEqual({ rule: 'match' });
  });

  it('are written in the new words, and a job with both is refused', () => {
    const job = readJobFile(older('match the die', 'as drawn'));
    if (!job.ok) throw new Error(job.problem.what);
    expect(writeJobFile(job.value)).not.toContain('punchCorners');
    expect(jobSchema.safeParse({ ...job.value, punchCorners: 'as drawn' }).success).toBe(false);
  });
});
