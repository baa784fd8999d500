import { describe, expect, it } from 'vitest';
import { newJob } from '../../../core/job';
import { stockMaterial, stockMaterials } from '../../../core/die/stock-materials';

describe('stockMaterials', () => {
  it('has the material of a new job', () => {
    expect(stockMaterial(newJob('a.dxf', '').stock.material)).toBeDefined();
  });

  it('knows no other id', () => {
    expect(stockMaterial('')).toBeUndefined();
    expect(stockMaterial('toString')).toBeUndefined();
  });

  // Shear strength is commonly put at 0.6 to 0.8 of the tensile strength (0.7: Kalpakjian & Schmid, eq. 16.1); the
  // tensile column holds upper ends of ranges.
  it('has strengths that go together', () => {
    for (const { shearStrength, tensileStrength } of stockMaterials) {
      if (!shearStrength || !tensileStrength) continue;
      expect(shearStrength.value / tensileStrength.value).toBeGreaterThan(0.5);
      expect(shearStrength.value / tensileStrength.value).toBeLessThan(0.85);
    }
  });

  it('has every id once and a source for every number', () => {
    expect(new Set(stockMaterials.map((row) => row.id)).size).toBe(stockMaterials.length);
    for (const { clearance, shearStrength, tensileStrength } of stockMaterials) {
      for (const number of [clearance, shearStrength, tensileStrength]) {
        if (number === null) continue;
        expect(number.source).not.toBe('');
        expect(number.status).not.toBe('typed');
      }
    }
  });
});
