import { describe, expect, it } from 'vitest';
import { createPipeline } from '../../../core/pipeline';
import { shippedStyles } from '../../../core/shipped-styles';
import { jobOn } from '../../support/dxf-of';
import { roundedRectangle } from '../../support/shapes';

// The proof reads every program back from its text: what a shipped style writes must leave it no doubt.
describe.each(Object.entries(shippedStyles))('the shipped style %s', (_, style) => {
  it.each([
    ['mm', 'wire centre'],
    ['inch', 'compensated'],
  ] as const)('passes the proof from the text, %s, %s', (unit, program) => {
    const job = jobOn([roundedRectangle(20, 10, 0.5)], { output: { unit, program, style } });
    const plan = createPipeline().plan(job);
    if (!plan.ok) throw new Error(plan.problem.what);
    expect(plan.value.findings.filter(({ weight }) => weight === 'stop')).toEqual([]);
    expect(plan.value.pairs.map(({ die, punch }) => [die.proof.passed, punch.proof.passed])).toEqual([
      [true, true],
    ]);
  });
});
