import { expect, it } from 'vitest';
import {
  asStockMaterial,
  nextOwnId,
  ownMaterialSchema,
  type OwnMaterial,
} from '../../../core/die/own-material';
import { readJobFile, writeJobFile } from '../../../core/job-file';
import { createPipeline } from '../../../core/pipeline';
import { jobOn } from '../../support/dxf-of';
import { circle } from '../../support/shapes';

const bronze: OwnMaterial = {
  id: 'own-1',
  name: 'phosphor bronze, mill certificate 12',
  family: 'copper',
  clearance: 0.05,
  shearStrength: 350,
  tensileStrength: null,
  source: 'our own trials',
};

it('an own material gives clearance and name like any other, and says who typed it', () => {
  const job = jobOn([circle(10)], {
    stock: { material: 'own-1', thickness: 0.5 },
    ownMaterials: [bronze],
  });
  const plan = createPipeline().plan(job);
  if (!plan.ok) throw new Error(plan.problem.what);
  expect(plan.value.clearance.perSide).toBeCloseTo(0.025, 12);
  expect(plan.value.clearance.reason).toContain('our own trials, typed');
  const files = createPipeline().files(job);
  const summary = files.ok ? files.value.find(({ name }) => name.endsWith('summary.txt')) : undefined;
  expect(summary?.text).toContain('phosphor bronze');
});

it('goes into the job file and comes back', () => {
  const job = jobOn([circle(10)], { ownMaterials: [bronze] });
  const read = readJobFile(writeJobFile(job));
  expect(read.ok && read.value.ownMaterials).toEqual([bronze]);
});

it('a job without own materials, as older ones are, still loads', () => {
  const { ownMaterials: _none, ...older } = JSON.parse(writeJobFile(jobOn([circle(1)]))) as Record<
    string,
    unknown
  >;
  const read = readJobFile(JSON.stringify(older));
  expect(read.ok && read.value.ownMaterials).toEqual([]);
});

it('ids never meet the shipped ones nor each other; odd values are refused', () => {
  expect(nextOwnId([])).toBe('own-1');
  expect(nextOwnId([bronze, { ...bronze, id: 'own-7' }])).toBe('own-8');
  for (const change of [
    { id: 'brass' },
    { name: ' ' },
    { clearance: 0 },
    { clearance: 5 },
    { shearStrength: -1 },
  ]) {
    expect(ownMaterialSchema.safeParse({ ...bronze, ...change }).success).toBe(false);
  }
});

it('a missing source is said to be missing', () => {
  expect(asStockMaterial({ ...bronze, source: ' ' }).clearance.source).toBe('no source given');
});
