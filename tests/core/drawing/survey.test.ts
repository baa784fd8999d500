import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { runsOf } from '../../../core/drawing/linework';
import { surveyDrawing } from '../../../core/drawing/survey-drawing';
import { chainLength } from '../../../core/geometry/contour-measures';
import { jobOnDrawing } from '../../../core/job-file';
import type { Job } from '../../../core/job';
import { createPipeline } from '../../../core/pipeline';
import { arc, bytes, circle, codesOf, dxf, line, raw, square, valueOf, type Groups } from './drawn';

const pipelineOn = (entities: Groups, code: number, drawing: Partial<Job['drawing']> = {}) => {
  const fresh = jobOnDrawing('part.dxf', bytes(dxf({ header: [9, '$INSUNITS', 70, code], entities })));
  const job: Job = { ...fresh, drawing: { ...fresh.drawing, ...drawing } };
  const pipeline = createPipeline();
  return { survey: valueOf(pipeline.survey(job)), plan: () => valueOf(pipeline.plan(job)) };
};

describe('everything that is drawn is handed over to be looked at', () => {
  it('by layer and colour, arcs as arcs, in mm; hidden and open lines among it', () => {
    const entities = [...line(0, 0, 3, 4, 'A'), ...arc(0, 0, 2, 0, 90), ...line(9, 9, 9, 19, 'A')];
    const { lines } = surveyDrawing(raw(dxf({ entities })), 'inch');
    expect(lines.map(({ layer }) => layer)).toEqual(['A', '0']);
    const lengths = lines.map((one) => [...runsOf(one)].map(chainLength));
    expect(lengths).toEqual([
      [expect.closeTo(5 * 25.4, 9), expect.closeTo(10 * 25.4, 9)],
      [expect.closeTo(Math.PI * 25.4, 9)],
    ]);
  });

  it('nothing, and no gaps, as long as the unit is open', () => {
    expect(surveyDrawing(raw(dxf({ entities: square(0, 0, 5) })), null)).toMatchObject({
      lines: [],
      gaps: null,
    });
  });

  it('with its contours, also those that are left out, before any tool is worked out', () => {
    const { survey } = pipelineOn([...square(0, 0, 20), ...circle(50, 0, 4, 'CONSTRUCTION')], 4);
    expect(survey.drawing?.contours.map(({ id }) => id)).toEqual(['c1']);
    expect(survey.drawing?.leftOut.map(({ id }) => id)).toEqual(['c2']);
    expect(pipelineOn(line(0, 0, 5, 5), 4).survey.drawing).toBeNull();
  });
});

describe('the size that tells the unit is the size of the part', () => {
  const sent = readFileSync(new URL('../../../samples/as-sent/picnic-lamp-bracket.dxf', import.meta.url));

  it('not of the sheet around it', () => {
    const survey = valueOf(createPipeline().survey(jobOnDrawing('lamp.dxf', new Uint8Array(sent))));
    // Bracket and washer reach from 20 to 150 and from 60 to 105 (build/sample-lamp-bracket.ts); the frame 200 × 140.
    expect(survey.units[0]).toMatchObject({ unit: 'mm', width: 130, height: 45, isStated: false });
    expect(survey.units[1]).toMatchObject({ unit: 'inch', width: 130 * 25.4, height: 45 * 25.4 });
  });

  it('a stated unit that makes it unusual is a decision, with the units that do not', () => {
    const { plan } = pipelineOn(square(0, 0, 80), 1);
    const [finding] = plan().findings.filter(({ code }) => code === 'unit-doubtful');
    expect(finding).toMatchObject({ weight: 'decide' });
    expect(finding?.message).toMatch(/states inch, and the part is then 2032 mm \(80 in\) × 2032 mm/);
    expect(finding?.cures.map((cure) => ('unit' in cure ? cure.unit : ''))).toEqual(['mm', 'cm', 'mil']);
  });

  it('nothing is asked where the size is usual, or a person has answered', () => {
    expect(codesOf({ ...pipelineOn(square(0, 0, 8), 1).plan().drawing })).toEqual([]);
    const usual = pipelineOn(square(0, 0, 8), 1).plan();
    const answered = pipelineOn(square(0, 0, 80), 1, { unit: 'inch' }).plan();
    for (const { findings } of [usual, answered])
      expect(findings.filter(({ code }) => code === 'unit-doubtful')).toEqual([]);
  });
});
