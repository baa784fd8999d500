import { describe, expect, it } from 'vitest';
import { chooseClearance } from '../../../core/die/choose-clearance';
import { cuttingForce, cuttingForceFromTensile } from '../../../core/die/cutting-force';
import { memberSizes } from '../../../core/die/member-sizes';
import { stockMaterial } from '../../../core/die/stock-materials';

/** Clearance per side from the stock table, mm. */
function tableClearance(material: string, thickness: number): number {
  const reply = chooseClearance({ rule: 'table' }, { material, thickness });
  if (!reply.ok) throw new Error(reply.problem.what);
  return reply.value.choice.perSide;
}

const shear = (material: string) => stockMaterial(material)?.shearStrength?.value ?? Number.NaN;

// Groover, Fundamentals of Modern Manufacturing, 3rd/4th ed., table 20.1: c = A·t.
describe('clearance table against Groover, table 20.1', () => {
  it.each([
    ['aluminium-1100-5052', 0.045],
    ['aluminium-2024-6061', 0.06],
    ['brass', 0.06],
    ['cold-rolled-soft', 0.06],
    ['stainless-soft', 0.06],
    ['cold-rolled-half-hard', 0.075],
    ['stainless-half-hard', 0.075],
    ['stainless-full-hard', 0.075],
  ])('%s: %s of the thickness', (material, allowance) => {
    for (const thickness of [0.2, 1, 3.2]) {
      expect(tableClearance(material, thickness)).toBeCloseTo(allowance * thickness, 12);
    }
    expect(stockMaterial(material)?.clearance.status).toBe('published');
  });
});

// Kalpakjian & Schmid, Manufacturing Engineering and Technology, 6th ed. SI, figure 16.3: 2 to 10 % of t.
it('keeps every published row inside the usual range of Kalpakjian, figure 16.3', () => {
  for (const material of ['aluminium-1100-5052', 'brass', 'cold-rolled-half-hard', 'stainless-full-hard']) {
    const fraction = tableClearance(material, 1);
    expect(fraction).toBeGreaterThanOrEqual(0.02);
    expect(fraction).toBeLessThanOrEqual(0.1);
  }
});

// EN 10139:1998 (DC01 LC 270 to 410, C390 390 to 540, C590 590 to 740) and EN 1652:1997 (Cu-DHP R220, 220 to 260).
it.each([
  ['cold-rolled-soft', 410],
  ['cold-rolled-half-hard', 540],
  ['steel-hard-rolled', 740],
  ['copper-annealed', 260],
])('%s: upper end of the tensile strength in the standard, %d MPa', (material, strength) => {
  const tensile = stockMaterial(material)?.tensileStrength;
  expect(tensile?.value).toBe(strength);
  expect(tensile?.status).toBe('published');
});

describe('worked examples', () => {
  // Groover, example 20.1: a disk of 150 mm from 3.2 mm half-hard cold-rolled steel, shear strength 310 MPa.
  it('Groover 20.1: blanking a disk', () => {
    const clearance = tableClearance('cold-rolled-half-hard', 3.2);
    expect(clearance).toBeCloseTo(0.24, 12);
    const { dieOffset, punchOffset } = memberSizes('blank', clearance);
    expect(150 + 2 * dieOffset).toBeCloseTo(150, 12);
    expect(150 + 2 * punchOffset).toBeCloseTo(149.52, 12);
    const length = Math.PI * 150;
    expect(length).toBeCloseTo(471.24, 2);
    expect(Math.round(cuttingForce(length, 3.2, shear('cold-rolled-half-hard')))).toBe(467_469);
  });

  // Kalpakjian & Schmid, form of example 16.1 with eq. 16.1: a 25 mm hole, 3.2 mm, UTS 1000 MPa.
  it('Kalpakjian 16.1: punching a hole', () => {
    expect(Math.round(cuttingForceFromTensile(Math.PI * 25, 3.2, 1000))).toBe(175_929);
  });

  // Derived from the definitions: washer, t 3.2, outside 65, inside 30, allowance 0.060.
  it('washer: the die gives the blank its size, the punch gives the hole its size', () => {
    const clearance = tableClearance('cold-rolled-soft', 3.2);
    expect(clearance).toBeCloseTo(0.192, 12);
    const blank = memberSizes('blank', clearance);
    const pierce = memberSizes('pierce', clearance);
    expect(65 + 2 * blank.dieOffset).toBe(65);
    expect(65 + 2 * blank.punchOffset).toBeCloseTo(64.616, 12);
    expect(30 + 2 * pierce.punchOffset).toBe(30);
    expect(30 + 2 * pierce.dieOffset).toBeCloseTo(30.384, 12);
  });

  // Derived from the definitions: blank 20 × 10, r 0.5, t 1, shear strength 310, allowance 0.075.
  it('rounded blank: punch size and force', () => {
    const clearance = tableClearance('cold-rolled-half-hard', 1);
    const { punchOffset } = memberSizes('blank', clearance);
    expect(20 + 2 * punchOffset).toBeCloseTo(19.85, 12);
    expect(10 + 2 * punchOffset).toBeCloseTo(9.85, 12);
    expect(0.5 + punchOffset).toBeCloseTo(0.425, 12);
    const perimeter = 2 * (19 + 9) + 2 * Math.PI * 0.5;
    expect(perimeter).toBeCloseTo(59.141593, 6);
    expect(cuttingForce(perimeter, 1, 310)).toBeCloseTo(18_333.89, 2);
  });

  // A common misprint is "punch = 0.94 × die" for 3 % of the stock per side: 60 mm and 1 mm make 59.94, not 56.4.
  it('takes percent of the stock, not of the part', () => {
    const reply = chooseClearance({ rule: 'percent', percent: 3 }, { material: 'brass', thickness: 1 });
    if (!reply.ok) throw new Error(reply.problem.what);
    expect(60 + 2 * memberSizes('blank', reply.value.choice.perSide).punchOffset).toBeCloseTo(59.94, 12);
  });
});
