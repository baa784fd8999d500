import { describe, expect, it } from 'vitest';
import { followTable } from '../../../core/follow-table';
import { newJob, passesOf } from '../../../core/job';
import { sayProblem } from '../../../core/problem';
import { shippedTechnology } from '../../../core/shipped-technology';
import type { Technology } from '../../../core/technology';
import { passOffsets } from '../../../core/wire/pass-offsets';
import { tabulatedPasses } from '../../../core/wire/tabulated-passes';

const rateOf = (wire: number, height: number, table: Technology = shippedTechnology) => {
  const found = tabulatedPasses(table, wire, height);
  return found.ok ? found.value[0]?.rate : sayProblem(found.problem);
};

const row = (wire: number, height: number, rate: number) => ({
  wire,
  height,
  passes: [{ sparkGap: 0.02, stockLeft: 0, rate, roughness: 2, wireSpeed: 8 }],
});
const table = {
  ...shippedTechnology,
  name: 'Test',
  rows: [row(0.25, 60, 3), row(0.25, 20, 1), row(0.2, 20, 2)],
};

describe('tabulatedPasses', () => {
  it('takes the next height at or above the block, whatever the order of the rows', () => {
    expect(rateOf(0.25, 10, table)).toBe(1);
    expect(rateOf(0.25, 20, table)).toBe(1);
    expect(rateOf(0.25, 20.001, table)).toBe(3);
    expect(rateOf(0.2, 5, table)).toBe(2);
  });

  it('takes inch wires by their metric row: 0.010 in is 0.254 mm, 1.6 % more', () => {
    expect(rateOf(0.254, 10, table)).toBe(1);
    expect(rateOf(0.2032, 10, table)).toBe(2);
  });

  it('says which wire or height is missing and what to do', () => {
    expect(rateOf(0.22, 10, table)).toBe(
      'The technology table "Test" has no row for 0.22 mm (0.00866 in) wire. Choose a wire of the table, add its rows, or type the passes.',
    );
    expect(rateOf(0.25, 61, table)).toBe(
      'The technology table "Test" goes up to 60 mm (2.3622 in) for 0.25 mm (0.00984 in) wire, and the block is 61 mm (2.40157 in) high. Add a row for the height, or type the passes.',
    );
    expect(rateOf(0.25, 10, { ...table, rows: [] })).toContain('has no row for');
  });
});

describe('the shipped table', () => {
  it('has gaps and skims within the ranges of its sources, and passes that come ever nearer', () => {
    // Overcut 0.020–0.050 mm per side (Groover, from memory); skims 0.003–0.015 mm (common practice).
    for (const { wire, height, passes } of shippedTechnology.rows) {
      const offsets = passOffsets(
        wire,
        passes.map((pass) => ({ ...pass, feed: pass.rate / height })),
      );
      expect(offsets.ok).toBe(true);
      for (const { sparkGap } of passes) {
        expect(sparkGap).toBeGreaterThanOrEqual(0.02);
        expect(sparkGap).toBeLessThanOrEqual(0.05);
      }
      passes.slice(1).forEach(({ sparkGap, stockLeft }, k) => {
        const before = passes[k] ?? { sparkGap: 0, stockLeft: 0 };
        const taken = before.sparkGap + before.stockLeft - sparkGap - stockLeft;
        expect(taken).toBeGreaterThanOrEqual(0.003);
        expect(taken).toBeLessThanOrEqual(0.0151);
      });
    }
  });

  it('roughs 0.25 mm wire in steel at no more than the low end of 100–200 mm²/min (common practice)', () => {
    const rates = shippedTechnology.rows
      .filter(({ wire }) => wire === 0.25)
      .map(({ passes }) => passes[0]?.rate);
    expect(Math.max(...rates.map((rate) => rate ?? NaN))).toBe(100);
  });
});

describe('followTable', () => {
  it('gives each member the passes of its block', () => {
    const job = followTable({ ...newJob('a.dxf', ''), technology: table, blocks: { die: 20, punch: 40 } });
    expect(passesOf(job, 'die').map(({ rate }) => rate)).toEqual([1]);
    expect(passesOf(job, 'punch').map(({ rate }) => rate)).toEqual([3]);
    const same = followTable({ ...job, blocks: { die: 10, punch: 20 } });
    expect(same.punchPasses).toBeNull();
  });

  it('leaves typed passes alone, and a member for which there is no row', () => {
    const typed = { ...newJob('a.dxf', ''), technology: table, passRule: 'typed' as const };
    expect(followTable(typed)).toBe(typed);
    const job = newJob('a.dxf', '');
    const high = followTable({ ...job, technology: table, blocks: { die: 20, punch: 400 } });
    expect(passesOf(high, 'die').map(({ rate }) => rate)).toEqual([1]);
    expect(passesOf(high, 'punch')).toEqual(job.passes);
  });
});
