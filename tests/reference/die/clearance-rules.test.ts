import { describe, expect, it } from 'vitest';
import { chooseClearance } from '../../../core/die/choose-clearance';
import { edgeTypeFraction, nearestEdgeType } from '../../../core/die/edge-types';
import { squareRootClearance } from '../../../core/die/square-root-clearance';
import { createPipeline } from '../../../core/pipeline';
import { mmPerInch, parseLength } from '../../../core/units';
import { regionLength } from '../../support/contour-facts';
import { jobOn } from '../../support/dxf-of';
import { circle } from '../../support/shapes';

// The square-root formula as recalled from Oehler & Kaiser, Schnitt-, Stanz- und Ziehwerkzeuge (7th ed. 1993); what is
// checked here is its arithmetic: c·t·√(τ/10) up to 3 mm, (1.5·c·t − 0.015)·√(τ/10) above, with τ 310 MPa.
describe('clearance by the square-root formula', () => {
  it.each([
    [0.01, 1, 0.05568],
    [0.01, 2, 0.11136],
    [0.01, 3, 0.16703],
    [0.01, 3.2, 0.18374],
    [0.01, 4, 0.25055],
    [0.01, 6, 0.41758],
    [0.005, 1, 0.02784],
  ])('factor %s at %s mm: %s mm', (factor, thickness, clearance) => {
    expect(squareRootClearance(thickness, 310, factor)).toBeCloseTo(clearance, 5);
  });

  it('its two ranges meet at 3 mm for the factor 0.01 only, and the program says so', () => {
    const justOver = 3 + 1e-9;
    expect(squareRootClearance(justOver, 310, 0.01)).toBeCloseTo(squareRootClearance(3, 310, 0.01), 6);
    expect(squareRootClearance(justOver, 310, 0.02)).toBeGreaterThan(1.2 * squareRootClearance(3, 310, 0.02));
    const notes = (factor: number, thickness: number) => {
      const reply = chooseClearance(
        { rule: 'square root', factor },
        { material: 'cold-rolled-half-hard', thickness },
      );
      if (!reply.ok) throw new Error(reply.problem.what);
      return reply.value.notes.map(({ code }) => code);
    };
    expect(notes(0.01, 4)).toEqual([]);
    expect(notes(0.008, 3)).toEqual([]);
    expect(notes(0.008, 4)).toContain('clearance-formula-jumps');
  });

  it('a material without shear strength, and a factor that makes nothing of it, are refused', () => {
    const problem = (material: string, factor: number, thickness: number) => {
      const reply = chooseClearance({ rule: 'square root', factor }, { material, thickness });
      return reply.ok ? 'none' : reply.problem.code;
    };
    expect(problem('stainless-half-hard', 0.01, 1)).toBe('shear-strength-none');
    expect(problem('brass', 0.002, 4)).toBe('clearance-not-positive');
    expect(problem('brass', 0.01, 1)).toBe('none');
  });
});

// Edge types after the ASM Handbook, vol. 14B, from memory: shipped as starting values, checked for consistency only.
describe('clearance for a wanted edge', () => {
  it('every type is nearest to itself, and smaller types have larger clearance', () => {
    for (const family of [
      'low-carbon steel',
      'high-carbon steel',
      'stainless steel',
      'brass',
      'copper',
    ] as const) {
      let before = 1;
      for (const type of [1, 2, 3, 4, 5] as const) {
        const fraction = edgeTypeFraction(family, type) ?? Number.NaN;
        expect(fraction).toBeLessThan(before);
        expect(nearestEdgeType(family, fraction)).toBe(type);
        before = fraction;
      }
    }
    expect(edgeTypeFraction('aluminium', 3)).toBeNull();
  });

  it('says in one sentence what the choice does, and whose word it is', () => {
    const effect = (percent: number, material = 'cold-rolled-soft') => {
      const reply = chooseClearance({ rule: 'percent', percent }, { material, thickness: 1 });
      return reply.ok ? reply.value.choice.effect : '';
    };
    expect(effect(1.5)).toMatch(/edge type 5.*second shear.*from memory/);
    expect(effect(21)).toMatch(/edge type 1.*tall burr/);
    expect(effect(6, 'aluminium-1100-o')).toMatch(/usual edge.*Kalpakjian/);
    expect(effect(1, 'aluminium-1100-o')).toMatch(/second sheared band/);
  });
});

// 1 in = 25.4 mm exactly. Precision work in thin strip: 0.0005 to 0.001 in (common practice).
describe('thin strip', () => {
  it('0.0005 in is kept to the last digit from the typed text to the punch', () => {
    const typed = parseLength('0.0005 in', { unit: 'mm' });
    const perSide = typed.ok ? typed.value : Number.NaN;
    expect(perSide).toBeCloseTo(0.0127, 15);
    const job = jobOn([circle(4)], {
      stock: { material: 'brass', thickness: 0.1 },
      clearance: { rule: 'typed', perSide },
    });
    const plan = createPipeline().plan(job);
    const pair = plan.ok ? plan.value.pairs[0] : undefined;
    expect(regionLength(pair?.punch.designed ?? []) / Math.PI).toBeCloseTo(8 - 0.001 * mmPerInch, 9);
    expect(pair?.fit?.least).toBeCloseTo(0.0127, 9);
    expect(pair?.fit?.greatest).toBeCloseTo(0.0127, 9);
  });
});
