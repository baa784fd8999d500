import { describe, expect, it } from 'vitest';
import { cuttingForce, cuttingForceFromTensile } from '../../../core/die/cutting-force';
import { shearedShare } from '../../../core/die/sheared-force';
import { springSet } from '../../../core/die/spring-set';
import { equivalentDiameter, strippingShare } from '../../../core/die/stripping-force';
import { reversedContour } from '../../../core/geometry/contour-measures';
import { newtonPerShortTon, sayForce } from '../../../core/say';
import { pointsAlong } from '../../support/contour-facts';
import { circle, polygon, roundedRectangle, square } from '../../support/shapes';

describe('cutting force', () => {
  // Common practice: a round hole in mild steel takes about 80·D·t short tons (inch), which is π·D·t·τ with τ near 51 ksi.
  it('agrees with the shop rule of 80 D t short tons for a shear strength of 51 ksi', () => {
    const shearStrength = 51 * 6.894757; // 1 ksi = 6.894757 MPa
    const force = cuttingForce(Math.PI * 25.4, 25.4 / 8, shearStrength);
    expect(force / newtonPerShortTon).toBeCloseTo((80 * 1) / 8, 1);
  });

  // 1 short ton-force = 2000 lbf = 8896.443 N (NIST SP 811, appendix B).
  it('says forces in kN and short tons', () => {
    expect(newtonPerShortTon).toBeCloseTo(8896.443, 3);
    expect(sayForce(467_469)).toBe('467 kN (52.5 short tons)');
  });

  // F = L·t·τ (Groover, chapter 20) and F = 0.7·t·L·UTS (Kalpakjian & Schmid, eq. 16.1) are one where τ = 0.7 UTS.
  it('both published forms agree where the shear strength is 0.7 of the tensile strength', () => {
    expect(cuttingForceFromTensile(100, 2, 400)).toBeCloseTo(cuttingForce(100, 2, 280), 9);
  });
});

// Schuler, Metal Forming Handbook (Springer 1998): stripping 3–5 % of the cutting force for a hole about ten stock
// thicknesses wide, 10–20 % for two.
describe('stripping force', () => {
  it('has the published values at both ends and stays there beyond', () => {
    for (const width of [20, 40]) expect(strippingShare(width, 2)).toEqual({ from: 0.03, to: 0.05 });
    for (const width of [4, 1]) {
      const { from, to } = strippingShare(width, 2);
      expect(from).toBeCloseTo(0.1, 12);
      expect(to).toBeCloseTo(0.2, 12);
    }
    const between = strippingShare(12, 2);
    expect(between.from).toBeCloseTo(0.065, 12);
    expect(between.to).toBeCloseTo(0.125, 12);
  });

  it('takes a contour as the hole whose area over its length it has', () => {
    expect(equivalentDiameter([circle(6)])).toBeCloseTo(12, 12);
    expect(equivalentDiameter([square(7)])).toBeCloseTo(7, 12);
    expect(equivalentDiameter([])).toBe(0);
  });
});

// Hooke's law.
describe('springs', () => {
  const spring = { rate: 50, longestDeflection: 12 };

  it('as few as hold the force open and still have room for the travel', () => {
    // 12 − 4 mm of preload at most: 400 N a spring; 1500 N take four, preloaded by 7.5 mm.
    const set = springSet(1500, 4, spring);
    expect(set.count).toBe(4);
    expect(set.preload).toBeCloseTo(7.5, 12);
    expect(set.openForce).toBeCloseTo(1500, 9);
    expect(set.closedForce).toBeCloseTo(4 * 50 * 11.5, 9);
    expect(set.overrun).toBe(0);
    expect(springSet(1600, 4, spring).count).toBe(4);
    expect(springSet(1601, 4, spring).count).toBe(5);
  });

  it('too few by hand, or more travel than the spring has, overrun it', () => {
    expect(springSet(1500, 4, spring, 2).overrun).toBeCloseTo(15 + 4 - 12, 6);
    expect(springSet(1500, 14, spring).overrun).toBeGreaterThan(0);
  });
});

// Exact geometry: what cuts is the edge within a band across the slope.
describe('shear on the cutting edge', () => {
  const flat = { shear: 'slope', depth: 2, direction: 0, penetration: 0.5 } as const;

  it('a rectangle sloped along its length: one end and two stretches of the sides', () => {
    const share = shearedShare([polygon([0, 0], [20, 0], [20, 6], [0, 6])], flat);
    expect(share).toBeCloseTo((6 + 2 * (20 * 0.25)) / 52, 6);
  });

  it('a roof over the same rectangle: both ends come last, or both long sides twice', () => {
    const roof = shearedShare([polygon([0, 0], [20, 0], [20, 6], [0, 6])], { ...flat, shear: 'roof' });
    expect(roof).toBeCloseTo((12 + 4 * (10 * 0.25)) / 52, 6);
  });

  it('a circle: most at its ends, where the edge runs across the slope', () => {
    const share = shearedShare([circle(10)], flat);
    // Band of 5 mm at the end of a circle of radius 10: an arc of 2·acos(1 − 5/10).
    expect(share).toBeCloseTo((2 * Math.acos(0.5)) / (2 * Math.PI), 6);
  });

  it('takes nothing off where it is flat or no deeper than the penetration', () => {
    expect(shearedShare([circle(10)], { ...flat, shear: 'flat' })).toBe(1);
    expect(shearedShare([circle(10)], { ...flat, depth: 0.5 })).toBe(1);
    expect(shearedShare([], flat)).toBe(1);
  });

  it('agrees with a fine count of points in the band, in any direction and with holes', () => {
    const region = [roundedRectangle(20, 10, 3), reversedContour(circle(2, 10, 5))];
    for (const direction of [0, 0.4, 1.3, -2]) {
      const share = shearedShare(region, { shear: 'slope', depth: 3, direction, penetration: 0.9 });
      const samples = region.flatMap((contour) => {
        const points = pointsAlong(contour, 1500);
        return points.map((p, i) => {
          const q = points[(i + 1) % points.length] ?? p;
          const middle = { x: (p.x + q.x) / 2, y: (p.y + q.y) / 2 };
          return {
            s: middle.x * Math.cos(direction) + middle.y * Math.sin(direction),
            length: Math.hypot(q.x - p.x, q.y - p.y),
          };
        });
      });
      const low = Math.min(...samples.map(({ s }) => s));
      const high = Math.max(...samples.map(({ s }) => s));
      const band = (0.9 / 3) * (high - low);
      const total = samples.reduce((sum, { length }) => sum + length, 0);
      let most = 0;
      for (let k = 0; k <= 400; k++) {
        const from = low + (k / 400) * (high - low - band);
        const inside = samples.filter(({ s }) => s >= from && s <= from + band);
        most = Math.max(
          most,
          inside.reduce((sum, { length }) => sum + length, 0),
        );
      }
      expect(share).toBeCloseTo(most / total, 2);
    }
  });
});
