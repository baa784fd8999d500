import { describe, expect, it } from 'vitest';
import { tabByWeight } from '../../../core/wire/tab-by-weight';

const disk = (diameter: number, height: number) => ({
  area: (Math.PI * diameter ** 2) / 4,
  perimeter: Math.PI * diameter,
  height,
});

describe('tabByWeight', () => {
  it('stays within what the trade uses: 2 to 6 mm, 0.5 to 1 for small slugs (common practice)', () => {
    expect(tabByWeight(disk(4, 25))).toEqual({ count: 1, length: 0.5 });
    expect(tabByWeight(disk(15, 25)).length).toBeLessThanOrEqual(1);
    for (const diameter of [40, 60, 100]) {
      const { count, length } = tabByWeight(disk(diameter, 50));
      expect(count).toBe(1);
      expect(length).toBeGreaterThanOrEqual(2);
      expect(length).toBeLessThanOrEqual(6);
    }
  });

  it('brings the stress at the tab to the limit it states', () => {
    // Bending of a cantilever (any handbook of strength of materials): stress = moment / section modulus. Both moments
    // about the tab's two axes, with the numbers of the docstring: 0.05 MPa, 50 MPa, steel of 7.85 g/cm³.
    const [diameter, height] = [100, 20];
    const { length } = tabByWeight(disk(diameter, height));
    const weight = 7.85e-6 * 9.81 * ((Math.PI * diameter ** 2) / 4) * height;
    const down = (weight * (diameter / 2)) / ((length * height ** 2) / 6);
    const sideways = (0.05 * diameter * height * (diameter / 2)) / ((height * length ** 2) / 6);
    expect(down + sideways).toBeLessThanOrEqual(50);
    // Rounded up to a tenth: hardly below.
    expect(down + sideways).toBeGreaterThan(46);
  });

  it('grows with the perimeter, and with the weight of a thin plate', () => {
    const lengths = [10, 20, 40, 80].map((diameter) => tabByWeight(disk(diameter, 25)).length);
    expect([...lengths].sort((a, b) => a - b)).toEqual(lengths);
    const whole = (height: number) =>
      tabByWeight(disk(100, height)).count * tabByWeight(disk(100, height)).length;
    expect(whole(2)).toBeGreaterThan(whole(50));
  });

  it('shares a large piece among several tabs', () => {
    const { count, length } = tabByWeight(disk(250, 50));
    expect(count).toBe(3);
    expect(length).toBeLessThanOrEqual(6);
    expect(tabByWeight(disk(5000, 50)).count).toBe(12);
  });
});
