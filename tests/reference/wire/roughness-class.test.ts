import { expect, it } from 'vitest';
import { roughnessClass } from '../../../core/wire/roughness-class';

// VDI 3400, classes with their Ra in µm as tabulated there.
const tabulated = [
  [12, 0.4],
  [15, 0.56],
  [18, 0.8],
  [21, 1.12],
  [24, 1.6],
  [27, 2.2],
  [30, 3.2],
  [33, 4.5],
  [36, 6.3],
  [39, 9],
  [42, 12.6],
  [45, 18],
] as const;

it.each(tabulated)('gives class %d for Ra %d µm', (k, roughness) => {
  expect(Math.round(roughnessClass(roughness))).toBe(k);
  // The table is rounded: its Ra is within 3 % of the formula's.
  const exact = 10 ** (k / 20) / 10;
  expect(Math.abs(roughness / exact - 1)).toBeLessThan(0.03);
});
