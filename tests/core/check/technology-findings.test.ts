import { describe, expect, it } from 'vitest';
import { technologyFindings } from '../../../core/check/technology-findings';
import { shippedTechnology } from '../../../core/shipped-technology';

const codes = (change: { wire?: number; die?: number; punch?: number; byTable?: boolean }) =>
  technologyFindings({
    technology: shippedTechnology,
    byTable: change.byTable ?? true,
    wire: change.wire ?? 0.25,
    heights: [
      { part: 'die', height: change.die ?? 25 },
      { part: 'punch', height: change.punch ?? 50 },
    ],
  }).map(({ code, weight, message }) => ({ code, weight, message }));

describe('technologyFindings', () => {
  it('finds nothing where the table has a row for both blocks', () => {
    expect(codes({})).toEqual([]);
    expect(codes({ die: 200, punch: 200, byTable: false })).toEqual([]);
  });

  it('asks once about a wire that the table does not have, and not where the passes were typed', () => {
    expect(codes({ wire: 0.07 })).toMatchObject([{ code: 'technology-no-row', weight: 'decide' }]);
    expect(codes({ wire: 0.07, byTable: false })).toEqual([]);
  });

  it('asks about each height beyond the table, and about a block that the machine does not take', () => {
    expect(codes({ die: 120, punch: 130 }).map(({ code }) => code)).toEqual([
      'technology-no-row',
      'technology-no-row',
    ]);
    const high = codes({ punch: 250, byTable: false });
    expect(high).toMatchObject([{ code: 'block-too-high', weight: 'decide' }]);
    expect(high[0]?.message).toContain('250 mm (9.84252 in)');
    expect(high[0]?.message).toContain('200 mm (7.87402 in)');
  });
});
