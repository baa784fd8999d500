import { describe, expect, it } from 'vitest';
import { pairCorners, type CornerQuery } from '../../../core/die/corner-radii';
import { newCorners, type CornerException, type CornerRules } from '../../../core/die/corner-rules';
import { angleShape } from '../../support/shapes';

const asDrawn = { rule: 'as drawn' } as const;
const match = { rule: 'match' } as const;
const radius = (mm: number) => ({ rule: 'radius', radius: mm }) as const;

const query = (use: 'blank' | 'pierce', rules: Partial<CornerRules> = {}): CornerQuery => ({
  contourId: 'c1',
  drawn: angleShape(10, 4),
  use,
  clearance: 0.06,
  reach: { die: 0.15, punch: 0.14 },
  rules: { ...newCorners, ...rules },
  sizeShift: 0,
});

/** What a corner of the L comes to in both members, mm: (10, 0) is convex, (4, 4) reflex. */
function radiiAt(corners: CornerQuery, x: number, y: number) {
  const corner = pairCorners(corners).corners.find(({ place: { at } }) => at.x === x && at.y === y);
  if (!corner) throw new Error('no such corner');
  return {
    die: corner.drawingRadius.die + corner.shift.die,
    punch: corner.drawingRadius.punch + corner.shift.punch,
    drawn: corner.drawingRadius,
  };
}

const one = (change: Partial<CornerException>): Partial<CornerRules> => ({
  exceptions: [{ contourId: 'c1', x: 10, y: 0, inside: null, outside: null, path: null, ...change }],
});

describe('radii under the rules (exact geometry: parallels of one arc are concentric)', () => {
  it('as drawn is as drawn', () => {
    expect(radiiAt(query('blank'), 10, 0).drawn).toEqual({ die: 0, punch: 0 });
    expect(radiiAt(query('pierce'), 4, 4).drawn).toEqual({ die: 0, punch: 0 });
  });

  it('a punch corner that matches the fillet the wire leaves in the die: reach − clearance', () => {
    const rules = { punch: { outside: match, inside: asDrawn } };
    for (const use of ['blank', 'pierce'] as const)
      expect(radiiAt(query(use, rules), 10, 0).punch).toBeCloseTo(0.15 - 0.06, 12);
    // The reflex corner is an inside one of the punch: its rule is another.
    expect(radiiAt(query('blank', rules), 4, 4).drawn.die).toBe(0);
  });

  it('a die corner that matches the fillet in the punch, by the reach there', () => {
    const rules = { die: { outside: match, inside: asDrawn } };
    expect(radiiAt(query('blank', rules), 4, 4).die).toBeCloseTo(0.14 - 0.06, 12);
    expect(radiiAt(query('pierce', rules), 4, 4).die).toBeCloseTo(0.14 - 0.06, 12);
  });

  it('an over-size fillet of one corner, and the punch corner that matches it', () => {
    for (const use of ['blank', 'pierce'] as const) {
      const { die, punch } = radiiAt(query(use, one({ inside: radius(0.5), outside: match })), 10, 0);
      expect(die).toBeCloseTo(0.5, 12);
      expect(punch).toBeCloseTo(0.44, 12);
    }
  });

  it('the other way round: a punch radius, and the die fillet that matches it', () => {
    for (const use of ['blank', 'pierce'] as const) {
      const { die, punch } = radiiAt(query(use, one({ inside: match, outside: radius(0.3) })), 10, 0);
      expect(punch).toBeCloseTo(0.3, 12);
      expect(die).toBeCloseTo(0.36, 12);
    }
  });

  it('both matching each other follow the fillet that the wire leaves', () => {
    const { punch, drawn } = radiiAt(query('blank', one({ inside: match, outside: match })), 10, 0);
    expect(drawn.die).toBe(0);
    expect(punch).toBeCloseTo(0.09, 12);
  });

  it('an exception belongs to one corner of one contour', () => {
    const rules = one({ outside: radius(0.3) });
    expect(radiiAt(query('blank', rules), 10, 0).punch).toBeCloseTo(0.3, 12);
    expect(radiiAt(query('blank', rules), 10, 4).drawn.punch).toBe(0);
    expect(radiiAt({ ...query('blank', rules), contourId: 'c2' }, 10, 0).drawn.punch).toBe(0);
    // Its place may be off by twice the gap, no more.
    expect(radiiAt(query('blank', one({ x: 10.009, outside: radius(0.3) })), 10, 0).punch).toBeCloseTo(
      0.3,
      12,
    );
    expect(radiiAt(query('blank', one({ x: 10.011, outside: radius(0.3) })), 10, 0).drawn.punch).toBe(0);
  });
});
