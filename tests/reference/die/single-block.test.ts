import { describe, expect, it } from 'vitest';
import {
  clearanceAfterRegrinds,
  singleBlock,
  singleBlockClearance,
  type SingleBlock,
} from '../../../core/die/single-block';
import { degrees, mmPerInch, radians } from '../../../core/units';

function solved(kerf: number, height: number, clearance: number): SingleBlock {
  const reply = singleBlock({ kerf, height, clearance });
  if (!reply.ok) throw new Error(reply.problem.what);
  return reply.value;
}

// Exact geometry: c = K/cos θ − h·tan θ, so h·sin θ + c·cos θ = K.
describe('one block, one cut: the angle', () => {
  it.each([
    [0.3, 10, 0.025, 1.57589],
    [0.3, 15, 0.025, 1.0505],
    [0.3, 20, 0.025, 0.78785],
    [0.3, 25, 0.025, 0.63027],
    [0.3, 30, 0.025, 0.52522],
    [0.3, 40, 0.025, 0.39391],
    [0.3, 50, 0.025, 0.31513],
    [0.012 * mmPerInch, 0.75 * mmPerInch, 0.0005 * mmPerInch, 0.87857],
    [0.012 * mmPerInch, 1 * mmPerInch, 0.001 * mmPerInch, 0.63027],
    [0.01 * mmPerInch, 0.5 * mmPerInch, 0.0005 * mmPerInch, 1.0887],
  ])('kerf %s, height %s, clearance %s: %s°', (kerf, height, clearance, angle) => {
    const { tilt } = solved(kerf, height, clearance);
    expect(degrees(tilt)).toBeCloseTo(angle, 5);
    expect(height * Math.sin(tilt) + clearance * Math.cos(tilt)).toBeCloseTo(kerf, 12);
    expect(singleBlockClearance(kerf, height, tilt)).toBeCloseTo(clearance, 12);
  });

  it('sensitivity at a height of 20: 0.01° takes 0.003491, a kerf 0.002 wider gives 0.002000', () => {
    const { tilt, perHundredthDegree, perHundredthGap } = solved(0.3, 20, 0.025);
    const exact = singleBlockClearance(0.3, 20, tilt + radians(0.01)) - 0.025;
    expect(exact).toBeCloseTo(-0.003491, 6);
    expect(perHundredthDegree).toBeCloseTo(exact, 6);
    expect(singleBlockClearance(0.302, 20, tilt) - 0.025).toBeCloseTo(0.002, 6);
    // A gap wider by 0.01 on each side widens the kerf by 0.02.
    expect(perHundredthGap).toBeCloseTo(singleBlockClearance(0.32, 20, tilt) - 0.025, 12);
  });

  it('regrinding both faces opens the clearance: c + (g + g)·tan θ', () => {
    const { tilt } = solved(0.3, 20, 0.025);
    const after = clearanceAfterRegrinds(0.025, 0.1, 0.1, tilt);
    // The same from the block that is left: lower by what was ground.
    expect(after).toBeCloseTo(singleBlockClearance(0.3, 19.8, tilt), 12);
  });

  it('needs c < K ≤ √(h² + c²)', () => {
    const problem = (kerf: number, height: number, clearance: number) => {
      const reply = singleBlock({ kerf, height, clearance });
      return reply.ok ? 'none' : reply.problem.code;
    };
    expect(problem(0.3, 20, 0.3)).toBe('single-block-clearance');
    expect(problem(0.3, 20, 0.31)).toBe('single-block-clearance');
    expect(problem(0.3, 20, 0.2999)).toBe('none');
    expect(problem(0.3, 0.2, 0.1)).toBe('single-block-height');
    expect(problem(0.3, Math.sqrt(0.09 - 0.01) + 1e-9, 0.1)).toBe('none');
  });
});
