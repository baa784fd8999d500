import { describe, expect, it } from 'vitest';
import { newDieSet, type DieSetSettings } from '../../../core/die-set-settings';
import { toolSection, type SectionPiece } from '../../../core/die/tool-section';
import { createPipeline } from '../../../core/pipeline';
import { jobOn } from '../../support/dxf-of';
import { circle } from '../../support/shapes';

// Exact geometry: a washer of 65 and 30 mm in 3.2 mm with 0.192 mm per side: die 65, punch 64.616; punch 30, die 30.384.
const pipeline = createPipeline();

function sheets(dieSet: Partial<DieSetSettings>) {
  const job = jobOn([circle(32.5), circle(15)], {
    stock: { material: 'cold-rolled-soft', thickness: 3.2 },
    dieSet: { ...newDieSet, ...dieSet },
  });
  const plan = pipeline.plan(job);
  if (!plan.ok) throw new Error(plan.problem.what);
  return plan.value.dieSet;
}

const of = (pieces: readonly SectionPiece[], steel: SectionPiece['steel']) =>
  pieces
    .filter((piece) => piece.steel === steel)
    .map(({ from, to }) => [Number(from.toFixed(6)), Number(to.toFixed(6))]);

describe('a tool cut open', () => {
  it.each(['level', 'upright'] as const)('separate tools along a %s line through the middle', (runs) => {
    const { tools, arrangement } = sheets({});
    const [blanking, piercing] = tools.map((sheet) => toolSection(sheet, arrangement, { runs, at: 0 }));
    expect(of(blanking?.upper ?? [], 'punch')).toEqual([[-32.308, 32.308]]);
    const [left, right] = of(blanking?.lower ?? [], 'die');
    expect(left?.[1]).toBe(-32.5);
    expect(right?.[0]).toBe(32.5);
    expect(of(piercing?.upper ?? [], 'punch')).toEqual([[-15, 15]]);
    expect(of(piercing?.lower ?? [], 'die')[0]?.[1]).toBe(-15.192);
  });

  it('compound: the punch with its piercing die below, the die with the piercing punch above', () => {
    const { tools, arrangement } = sheets({ arrangement: 'compound' });
    const section = tools[0] && toolSection(tools[0], arrangement, { runs: 'level', at: 0 });
    expect(section?.isDieUp).toBe(true);
    expect(of(section?.lower ?? [], 'punch')).toEqual([
      [-32.308, -15.192],
      [15.192, 32.308],
    ]);
    expect(of(section?.upper ?? [], 'punch')).toEqual([[-15, 15]]);
    expect(of(section?.upper ?? [], 'die')[0]?.[1]).toBe(-32.5);
  });

  it('the stripper stands round the punch by its gap, and a line off the block cuts nothing', () => {
    const { tools, arrangement } = sheets({ stripper: { ...newDieSet.stripper, make: true } });
    const section = tools[0] && toolSection(tools[0], arrangement, { runs: 'level', at: 0 });
    expect(of(section?.upper ?? [], 'stripper')[0]?.[1]).toBe(-32.318);
    expect(tools[0] && toolSection(tools[0], arrangement, { runs: 'level', at: 500 })).toBeNull();
  });
});
