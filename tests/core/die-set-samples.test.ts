import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { newDieSet, type DieSetSettings } from '../../core/die-set-settings';
import { jobOnDrawing } from '../../core/job-file';
import type { Job } from '../../core/job';
import { createPipeline } from '../../core/pipeline';
import { membersOf } from '../../core/wire/members-of';

const samples = [
  'letterbox-hinge-leaf',
  'heat-sink-spacer-inch',
  'bicycle-bell-striker-plate',
  'rain-gauge-contact-spring',
];
const arrangements = ['simple', 'two stations', 'compound'] as const;
const reliefs = ['none', 'land and relief', 'one tapered cut'] as const;

describe.each(samples)('every die set of %s', (sample) => {
  const path = fileURLToPath(new URL(`../../samples/${sample}.dxf`, import.meta.url));
  const job = jobOnDrawing(path, readFileSync(path));
  const pipeline = createPipeline();
  const planned = (dieSet: Partial<DieSetSettings>, changes: Partial<Job> = {}) => {
    const plan = pipeline.plan({ ...job, ...changes, dieSet: { ...newDieSet, ...dieSet } });
    if (!plan.ok) throw new Error(plan.problem.what);
    return plan.value;
  };

  it.each(arrangements)('%s, with plates: every program is proved, no plate stops', (arrangement) => {
    const plan = planned({
      arrangement,
      stripper: { ...newDieSet.stripper, make: true },
      retainer: { ...newDieSet.retainer, make: true },
    });
    const cut = membersOf(plan).filter(({ cuts }) => cuts.length > 0);
    expect(cut.filter(({ proof }) => !proof.passed).map(({ id }) => id)).toEqual([]);
    const ofPlates = new Set(cut.flatMap(({ id, part }) => (part === 'die' || part === 'punch' ? [] : [id])));
    const stops = plan.findings.filter(
      ({ weight, memberId }) => weight === 'stop' && ofPlates.has(memberId ?? ''),
    );
    expect(stops.map(({ title }) => title)).toEqual([]);
  });

  it.each(reliefs)('compound with %s as relief: punch and piercing dies of one block are proved', (kind) => {
    const plan = planned({ arrangement: 'compound' }, { relief: { ...job.relief, kind } });
    const failed = membersOf(plan).filter(({ cuts, proof }) => cuts.length > 0 && !proof.passed);
    expect(failed.map(({ id }) => id)).toEqual([]);
  });

  it('out of one block: every cut is proved, both edges the clearance apart or a finding says where not', () => {
    const plan = planned({ oneBlock: true });
    const saysUneven = new Set(
      plan.findings.flatMap(({ code, contourId }) => (code === 'one-block-uneven' ? [contourId] : [])),
    );
    for (const { contourId, die, fit } of plan.pairs) {
      if (die.cuts.length === 0) continue;
      expect(die.proof.passed).toBe(true);
      const off = Math.abs((fit?.least ?? 0) - plan.clearance.perSide);
      expect(off > 0.000_5).toBe(saysUneven.has(contourId));
    }
    expect(plan.pairs.some(({ die }) => die.cuts.length > 0)).toBe(true);
  });
});
