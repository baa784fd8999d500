import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Finding } from '../../../core/finding';
import { cautions } from '../../../core/output/cautions';
import { fileStem, outputFiles } from '../../../core/output/output-files';
import { writeSummary } from '../../../core/output/write-summary';
import { exampleParts, planOf } from '../../support/plan-of';

const finding: Finding = {
  key: 'k1',
  code: 'inside-corner',
  weight: 'decide',
  title: 'Sharp inside corner, 90°',
  message: 'The wire leaves 0.0621 mm (0.00245 in).',
  place: null,
  contourId: null,
  memberId: null,
  numbers: [],
  cures: [],
};

const names = (released: boolean) => {
  const parts = exampleParts();
  return outputFiles(parts.job, planOf({ ...parts, released }), '{"a":1}').map((file) => file.name);
};

describe('outputFiles', () => {
  it('names every file after the job, and the member where there is one', () => {
    expect(names(true)).toEqual([
      'example-paths.dxf',
      'example-outline.dxf',
      'example-blank-1-die.nc',
      'example-blank-1-punch.nc',
      'example-drill-list.csv',
      'example-work-list.csv',
      'example-findings.csv',
      'example-summary.txt',
      'example.diewright.json',
    ]);
  });

  it('marks drawing and programs of a draft in their names', () => {
    const draft = names(false).filter((name) => name.includes('.DRAFT.'));
    expect(draft).toEqual([
      'example-paths.DRAFT.dxf',
      'example-blank-1-die.DRAFT.nc',
      'example-blank-1-punch.DRAFT.nc',
      'example-drill-list.DRAFT.csv',
      'example-work-list.DRAFT.csv',
    ]);
  });

  it('keeps the job file as it was given', () => {
    const parts = exampleParts();
    expect(outputFiles(parts.job, planOf(parts), '{"a":1}').at(-1)?.text).toBe('{"a":1}');
  });

  it('gives the same bytes for the same plan', () => {
    const parts = exampleParts();
    expect(outputFiles(parts.job, planOf(parts), '')).toEqual(outputFiles(parts.job, planOf(parts), ''));
  });
});

describe('fileStem', () => {
  it.each([
    ['Bügel groß 3', 'Bugel-gross-3'],
    ['../../etc/passwd', 'etc-passwd'],
    ['a.b\\c:d', 'a-b-c-d'],
    ['', 'job'],
    ['…', 'job'],
    ['NUL', 'job-NUL'],
    ['x'.repeat(300), 'x'.repeat(60)],
  ])('%j becomes %j', (name, stem) => {
    expect(fileStem(name)).toBe(stem);
  });

  it('is safe whatever the name', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary' }), (name) => {
        expect(fileStem(name)).toMatch(/^[A-Za-z0-9]([A-Za-z0-9-]{0,63}[A-Za-z0-9])?$/);
      }),
    );
  });
});

describe('writeSummary', () => {
  const parts = exampleParts();

  it('says what was made of what, in mm and inch, and gives every caution', () => {
    const text = writeSummary(planOf(parts), parts.job);
    expect(text).toContain('RELEASED');
    expect(text).toContain('20 mm (0.7874 in) × 10 mm (0.3937 in)');
    expect(text).toContain('half-hard cold-rolled steel');
    expect(text).toContain('0.075 mm (0.00295 in) per side');
    expect(text).toContain('one rough\n');
    // Worked example [D]: path lengths 58.199115 and 59.612832, together 117.811947.
    expect(text).toContain('117.8119 mm');
    expect(text).toContain('largest gouge 0 mm');
    for (const caution of cautions) expect(text).toContain(caution);
    expect(text).not.toContain('DRAFT');
  });

  it('lists findings, open and settled, and says DRAFT', () => {
    const plan = planOf({ ...parts, findings: [finding, { ...finding, key: 'k2' }], released: false });
    const job = { ...parts.job, settled: { k2: { reason: 'Agreed\nby letter' } } };
    const text = writeSummary(plan, job);
    expect(text.split('\n')[1]).toMatch(/^DRAFT/);
    expect(text).toContain('decide Sharp inside corner, 90°: The wire leaves 0.0621 mm (0.00245 in).\n');
    expect(text).toContain('[settled: Agreed by letter]');
  });

  it('says where a proof failed', () => {
    const plan = planOf(parts);
    const pairs = plan.pairs.map((pair) => ({
      ...pair,
      punch: { ...pair.punch, proof: { ...pair.punch.proof, passed: false, gouge: 0.02 } },
    }));
    const text = writeSummary({ ...plan, pairs }, parts.job);
    expect(text).toMatch(/blank-1-punch: PROOF FAILED, gouge 0\.02 mm/);
    expect(text).toMatch(/blank-1-die: proof passed/);
  });
});
