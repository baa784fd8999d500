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

  it('has every id once and a source for every number', () => {
    expect(new Set(stockMaterials.map((row) => row.id)).size).toBe(stockMaterials.length);
    for (const { clearance, shearStrength } of stockMaterials) {
      expect(clearance.source).not.toBe('');
      expect(shearStrength?.source).not.toBe('');
    }
  });
});
