import { describe, expect, it } from 'vitest';
import {
  blockAround,
  dieBlockThickness,
  edgeDistance,
  hasSharpCorners,
} from '../../../core/die/die-block-size';
import { leastHole } from '../../../core/die/die-rules';
import { punchStrength } from '../../../core/die/punch-strength';
import { exitEnlargement, growthPerGrind, regrindsLeft } from '../../../core/die/regrinds';
import { screwPlaces } from '../../../core/die/screw-places';
import { mmPerInch, radians } from '../../../core/units';
import { circle, polygon, roundedRectangle, square } from '../../support/shapes';

// Euler's load π²·E·I/(K·L)²: any text on strength of materials; E 210 000 MPa.
describe('weak punches', () => {
  const query = { force: 5000, freeLength: 60, end: 'guided', permittedStress: 1200 } as const;

  it('a flat blade buckles about its thin side', () => {
    const strength = punchStrength({ ...query, region: [polygon([0, 0], [12, 0], [12, 1], [0, 1])] });
    expect(strength?.bucklingLoad).toBeCloseTo((Math.PI ** 2 * 210_000 * (12 / 12)) / (0.7 * 60) ** 2, 6);
    expect(strength?.slenderness).toBeCloseTo((0.7 * 60) / Math.sqrt(1 / 12), 9);
    expect(strength?.limit).toBe('buckling');
    expect(strength?.safety).toBeCloseTo((strength?.bucklingLoad ?? 0) / 5000, 12);
  });

  it('a stocky punch is limited by stress instead', () => {
    const strength = punchStrength({ ...query, region: [circle(5)] });
    expect(strength?.limit).toBe('stress');
    expect(strength?.capacity).toBeCloseTo(1200 * Math.PI * 25, 6);
    expect(strength?.stress).toBeCloseTo(5000 / (Math.PI * 25), 9);
  });

  // Press tool handbooks: longest round punch L = (π·d/8)·√(E·d/(τ·t)), which is Euler's load, hinged at both ends, set
  // equal to π·d·t·τ.
  it('the longest round punch is that of the handbooks’ formula', () => {
    const [d, t, tau] = [3, 1.5, 310];
    const force = Math.PI * d * t * tau;
    const strength = punchStrength({ ...query, region: [circle(d / 2)], force, end: 'hinged' });
    expect(strength?.longestLength).toBeCloseTo(
      ((Math.PI * d) / 8) * Math.sqrt((210_000 * d) / (tau * t)),
      9,
    );
  });

  it('the three ends stand as 4 to 1 to 0.49 of effective length squared', () => {
    const load = (end: 'free' | 'guided' | 'hinged') =>
      punchStrength({ ...query, end, region: [circle(1)] })?.bucklingLoad ?? Number.NaN;
    expect(load('hinged') / load('free')).toBeCloseTo(4, 12);
    expect(load('guided') / load('hinged')).toBeCloseTo(1 / 0.49, 12);
  });

  it('no section or no force, no answer', () => {
    expect(punchStrength({ ...query, region: [] })).toBeNull();
    expect(punchStrength({ ...query, force: 0, region: [circle(1)] })).toBeNull();
  });
});

// Exact geometry: growth g·tan α, exit enlargement (h − land)·tan α.
describe('land, relief and regrinds', () => {
  it('growth of the opening for each regrind in the relief', () => {
    expect(growthPerGrind(0.007, radians(0.25))).toBeCloseTo(0.0000305, 7); // inch
    expect(growthPerGrind(0.1, radians(0.25))).toBeCloseTo(0.000436, 6);
  });

  it('exit enlargement behind the land', () => {
    expect(exitEnlargement(25, { land: 3, relief: radians(0.5) })).toBeCloseTo(0.19199, 5);
    expect(exitEnlargement(2, { land: 3, relief: radians(0.5) })).toBe(0);
  });

  it('regrinds left: the land by tenths; a straight opening down to the least height', () => {
    expect(regrindsLeft({ land: 3, relief: radians(0.5) }, 0.1, 25, 20)).toBe(30);
    expect(regrindsLeft({ land: 0.3, relief: radians(0.5) }, 0.1, 25, 20)).toBe(3);
    expect(regrindsLeft({ land: 3, relief: 0 }, 0.15, 25, 22)).toBe(20);
    expect(regrindsLeft({ land: 3, relief: radians(0.5) }, 0.1, 20, 20)).toBe(0);
  });
});

// Common practice: hole ≥ 1.2 t (stainless 2 t); opening to edge 1.25 × block thickness, 1.5 × where corners are sharp.
describe('die block rules', () => {
  it('hole rule by kind of metal', () => {
    expect(leastHole('stainless steel').value).toBe(2);
    expect(leastHole('brass').value).toBe(1.2);
    expect(leastHole(null).value).toBe(1.2);
  });

  it('edge distance by corners', () => {
    expect(hasSharpCorners([roundedRectangle(20, 10, 2)])).toBe(false);
    expect(hasSharpCorners([circle(3)])).toBe(false);
    expect(hasSharpCorners([square(5)])).toBe(true);
    expect(hasSharpCorners([circle(3), square(5)])).toBe(true);
    expect(edgeDistance([circle(3)], 20)).toBeCloseTo(25, 12);
    expect(edgeDistance([square(5)], 20)).toBeCloseTo(30, 12);
  });

  // K·∛F with F in kilogram-force (press tool design texts, from memory): 1000 kgf and no more than 50 mm of cut make 10 mm.
  it('thickness by force and by stock, the larger of both', () => {
    expect(dieBlockThickness(9806.65, 40, 1).byForce).toBeCloseTo(10, 9);
    expect(dieBlockThickness(9806.65, 100, 1).byForce).toBeCloseTo(13.7, 9);
    expect(dieBlockThickness(100, 40, 1).byStock).toBeCloseTo(0.75 * mmPerInch, 9);
    expect(dieBlockThickness(100, 40, 3.2).byStock).toBeCloseTo((9 / 8) * mmPerInch, 9);
    // 9950 N are 1014.62 kgf, 13.7 · ∛1.01462 = 13.766 mm by hand: a rule of thumb says no micrometres.
    expect(dieBlockThickness(9950, 100, 1).byForce).toBe(13.8);
    const thick = dieBlockThickness(467_469, 471, 3.2);
    expect(thick.least).toBe(Math.max(thick.byForce, thick.byStock));
  });

  it('a block around openings, whole mm about their middle', () => {
    const block = blockAround([roundedRectangle(20.3, 10, 2)], 25);
    expect(block).toEqual({ minX: 10.15 - 35.5, maxX: 10.15 + 35.5, minY: 5 - 30, maxY: 5 + 30 });
    expect(blockAround([], 25)).toBeNull();
  });

  it('screws and dowels stand clear of edges and openings, or say that they do not', () => {
    const openings = [roundedRectangle(20, 10, 2)];
    const block = { minX: -30, minY: -30, maxX: 50, maxY: 40 };
    const places = screwPlaces(block, openings, 25);
    expect(places.map(({ kind }) => kind).sort()).toEqual([
      'dowel',
      'dowel',
      ...Array<string>(4).fill('screw'),
    ]);
    for (const { x, y, diameter, isFree } of places) {
      expect(isFree).toBe(true);
      const toEdge = Math.min(x - block.minX, block.maxX - x, y - block.minY, block.maxY - y);
      expect(toEdge).toBeGreaterThanOrEqual(1.5 * diameter - 1e-9);
    }
    // The dowels are not each other's mirror image: the block goes on one way only.
    const [first, second] = places.filter(({ kind }) => kind === 'dowel');
    expect((first?.x ?? 0) + (second?.x ?? 0)).not.toBeCloseTo(block.minX + block.maxX, 6);
    const tight = screwPlaces({ minX: -3, minY: -3, maxX: 23, maxY: 13 }, openings, 25);
    expect(tight.some(({ isFree }) => !isFree)).toBe(true);
  });
});
