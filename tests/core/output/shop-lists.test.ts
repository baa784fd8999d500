import { describe, expect, it } from 'vitest';
import type { SetupSettings } from '../../../core/cut-settings';
import { createPipeline } from '../../../core/pipeline';
import { writeDrillList } from '../../../core/output/write-drill-list';
import { writeWorkList } from '../../../core/output/write-work-list';
import { jobOn } from '../../support/dxf-of';
import { readCsv } from '../../support/read-csv';
import { circle, square } from '../../support/shapes';

/** A plate 40 by 40 with a round hole and, in the hole's waste, a drilled one of 1.2 mm, left out of the part and threaded through. */
function planned(setup: Partial<SetupSettings> = {}) {
  const uses = { c3: 'leave out' } as const;
  const job = jobOn([square(40), circle(6, 12, 20), circle(0.6, 12, 20)], { uses });
  const plan = createPipeline().plan({ ...job, setup: { ...job.setup, ...setup } });
  if (!plan.ok) throw new Error(plan.problem.what);
  return { job, plan: plan.value };
}

function tableOf(text: string): Record<string, string>[] {
  const [header = [], ...rows] = readCsv(text);
  return rows.map((row) => Object.fromEntries(header.map((name, i) => [name, row[i] ?? ''])));
}

describe('the drill list', () => {
  const { job, plan } = planned();
  const rows = tableOf(writeDrillList(plan, job));
  const cuts = plan.pairs.flatMap(({ die, punch }) => [...die.cuts, ...punch.cuts]);
  const holes = cuts.flatMap(({ id, starts }) => starts.map((start) => ({ id, start })));

  it('has every start hole once, with its own name, place and diameter', () => {
    expect(rows).toHaveLength(holes.length);
    expect(new Set(rows.map(({ hole }) => hole)).size).toBe(rows.length);
    for (const row of rows) {
      const own = holes.filter(({ id }) => id === row['cut']);
      const near = own.filter(
        ({ start }) =>
          start !== null &&
          Math.abs(start.x - Number(row['x (mm)'])) < 0.0006 &&
          Math.abs(start.y - Number(row['y (mm)'])) < 0.0006 &&
          Math.abs(start.diameter - Number(row['diameter (mm)'])) < 0.0006,
      );
      expect(near).toHaveLength(1);
      expect(plan.blocks.some(({ id }) => id === row['block'])).toBe(true);
    }
  });

  it('says each place in inch too, 25.4 mm exactly, and how deep the hole is', () => {
    for (const row of rows) {
      for (const size of ['x', 'y', 'diameter', 'depth'])
        expect(Number(row[`${size} (inch)`]) * 25.4).toBeCloseTo(Number(row[`${size} (mm)`]), 2);
      expect(row['depth (mm)']).toBe(row['cut']?.includes('punch') ? '50.000' : '25.000');
    }
  });

  it('names the holes that the drawing has already', () => {
    const drawn = rows.filter((row) => row['made by'] === 'in the drawing');
    // It lies in the waste of the hole's die and, since that is waste of the plate's, in the waste of that die too.
    expect(drawn.map((row) => row['cut'])).toEqual(['blank-c1-die-1', 'pierce-c2-die-1']);
    for (const row of drawn)
      expect([row['x (mm)'], row['y (mm)'], row['diameter (mm)']]).toEqual(['12.000', '20.000', '1.200']);
    const others = rows.filter((row) => !drawn.includes(row));
    expect(new Set(others.map((row) => row['made by']))).toEqual(
      new Set(['to be drilled or eroded through']),
    );
  });
});

describe('the list of the order of work', () => {
  it.each(['part by part', 'roughing first'] as const)(
    '%s: threadings, passes and stops in order',
    (sequence) => {
      const { job, plan } = planned({ sequence });
      const rows = tableOf(writeWorkList(plan));
      const holes = new Set(tableOf(writeDrillList(plan, job)).map(({ hole }) => hole));
      for (const block of plan.blocks) {
        const own = rows.filter((row) => row['block'] === block.id);
        expect(own.map(({ step }) => Number(step))).toEqual(own.map((_, k) => k + 1));
        expect(own[0]?.['what']).toBe('thread');
        // Every threading of the plan stands there, from a hole of the drill list.
        const threadings = own.filter((row) => row['what'] === 'thread');
        expect(threadings).toHaveLength(block.order.length);
        for (const { detail = '' } of threadings) expect(holes.has(detail)).toBe(true);
        // Nobody has to be there before the first stop.
        const stop = own.findIndex((row) => row['what'] === 'stop');
        expect(own.slice(0, stop).every((row) => row['someone there'] === 'unattended')).toBe(true);
        expect(own[stop]?.['someone there']).toBe('attended');
        const passes = own.filter((row) => row['what'] === 'cut').map(({ detail }) => detail);
        for (const pass of ['rough', 'rough, tab', 'skim 1', 'skim 2']) expect(passes).toContain(pass);
      }
    },
  );
});
