import { describe, expect, it } from 'vitest';
import { newRelief, type ReliefSettings } from '../../core/die/relief-rules';
import type { FindingCode } from '../../core/finding';
import { contourBox } from '../../core/geometry/contour-measures';
import type { Contour } from '../../core/geometry/contour';
import type { Job } from '../../core/job';
import { readJobFile } from '../../core/job-file';
import { createPipeline } from '../../core/pipeline';
import { radians } from '../../core/units';
import { jobOn } from '../support/dxf-of';
import { angleShape, circle, corner, polygon, roundedRectangle, square } from '../support/shapes';

function planOf(shape: Contour, relief: Partial<ReliefSettings>, changes: Partial<Job> = {}) {
  const job = jobOn([shape], changes);
  const pipeline = createPipeline();
  const relieved = { ...job, relief: { ...newRelief, kind: 'land and relief' as const, ...relief } };
  const plan = pipeline.plan(relieved);
  const files = pipeline.files(relieved);
  if (!plan.ok || !files.ok) throw new Error('no plan');
  const [pair] = plan.value.pairs;
  if (!pair) throw new Error('no pair');
  const program = files.value.find(({ name }) => name.includes('die') && name.endsWith('.nc'))?.text ?? '';
  const summary = files.value.find(({ name }) => name.endsWith('summary.txt'))?.text ?? '';
  return { plan: plan.value, die: pair.die, punch: pair.punch, program, summary };
}

const codes = ({ plan }: ReturnType<typeof planOf>, code: FindingCode) =>
  plan.findings.filter((finding) => finding.code === code);

describe('land and relief in two cuts', () => {
  const made = planOf(roundedRectangle(20, 10, 1), {});

  it('h 25, land 3, 0.5°: the exit face is 0.19199 mm larger on each side (exact geometry)', () => {
    const box = contourBox(made.die.relief?.planes.at(-1)?.wall[0] ?? []);
    expect(box.maxX - 20).toBeCloseTo(0.19199, 5);
    expect(-box.minY).toBeCloseTo(0.19199, 5);
    expect(made.die.relief).toMatchObject({ land: 3, height: 25 });
    expect(made.program).toMatch(/V-0\.19199/);
    expect(made.summary).toMatch(/Relief +0\.5° per side below a land of 3 mm/);
    expect(made.summary).toMatch(/Exit face +0\.192 mm/);
  });

  it('the relief is a last pass, threaded anew, with the rough gap level in the plane: 0.150 / cos 0.5°', () => {
    const [cut] = made.die.cuts;
    const relief = cut?.passes.at(-1);
    expect(cut?.passes.map(({ lean }) => lean)).toEqual([undefined, undefined, undefined, 'relief']);
    expect(relief?.offset).toBeCloseTo(0.15 / Math.cos(radians(0.5)), 12);
    expect(cut?.threadings.at(-1)?.runs).toEqual([{ pass: 3, part: 'main', index: 0, stop: null }]);
    const order = made.plan.blocks.find(({ role }) => role === 'die')?.order ?? [];
    expect(order.at(-1)?.threading).toBe((cut?.threadings.length ?? 0) - 1);
    expect(made.program.indexOf('(RELIEF)')).toBeGreaterThan(made.program.indexOf('(SKIM 2)'));
  });

  it('the wire is upright where it is threaded and where it waits, and U and V belong to the relief alone', () => {
    for (const { path } of made.die.cuts.flatMap(({ passes }) =>
      passes.flatMap(({ main }) => main.map((path) => ({ path }))),
    )) {
      const { upper } = path;
      if (!upper) continue;
      expect(upper.leadIn[0]).toMatchObject({ x: path.leadIn[0]?.x, y: path.leadIn[0]?.y });
      expect(upper.leadOut.at(-1)).toMatchObject({ x: path.leadOut.at(-1)?.x, y: path.leadOut.at(-1)?.y });
      for (const part of ['leadIn', 'cut', 'leadOut'] as const)
        expect(upper[part]).toHaveLength(path[part].length);
    }
    const [before, after] = made.program.split('(RELIEF)');
    expect(before).not.toMatch(/^N\d+ .*[UV]-?\d/m);
    expect(
      after
        ?.trim()
        .split('\n')
        .filter((line) => / G0[123] /.test(line))
        .at(-1),
    ).toMatch(/U0\.00000 V0\.00000/);
  });

  it('is released with its proofs: the text of the program, and the surface in three planes', () => {
    expect(made.plan.released).toBe(true);
    expect(made.die.relief?.planes.map(({ depth }) => depth)).toEqual([3, 14, 25]);
    for (const { gouge, remainder } of made.die.relief?.planes ?? []) {
      expect(gouge).toBeLessThan(1e-7);
      expect(remainder).toBeLessThan(0.0004);
    }
    expect(codes(made, 'proof-program')).toEqual([]);
    expect(made.punch.relief).toBeUndefined();
  });

  it('says once how long the land lasts, and what a regrind then does: g·tan a', () => {
    const quarter = planOf(circle(5), { angleDeg: 0.25 });
    const [note, ...others] = codes(quarter, 'relief-growth');
    expect(others).toEqual([]);
    expect(note?.numbers.map(({ value }) => value)).toEqual([expect.closeTo(0.000436, 6), 30]);
  });
});

describe('one tapered cut', () => {
  const made = planOf(angleShape(12, 5), { kind: 'one tapered cut', angleDeg: 2 });

  it('every pass leans, farther off in the plane by 1 / cos a; the cutting edge stays the designed one', () => {
    const passes = made.die.cuts[0]?.passes ?? [];
    expect(passes.every(({ lean, contour }) => lean === 'taper' && contour === null)).toBe(true);
    expect(passes.at(-1)?.offset).toBeCloseTo(0.145 / Math.cos(radians(2)), 12);
    expect(made.die.proof.passed).toBe(true);
    const box = contourBox(made.die.relief?.planes.at(-1)?.wall[0] ?? []);
    expect(box.maxX - 12).toBeCloseTo(25 * Math.tan(radians(2)), 9);
    expect(codes(made, 'relief-growth')[0]?.title).toBe('Every regrind opens the die');
  });

  it('is written as the path of the wire, whatever kind of program is asked for', () => {
    const job = jobOn([square(10)], {});
    const made = planOf(
      square(10),
      { kind: 'one tapered cut' },
      { output: { ...job.output, program: 'compensated' } },
    );
    const { program } = made;
    expect(codes(made, 'relief-program')).toMatchObject([{ weight: 'note' }]);
    expect(program).not.toMatch(/G4[12]/);
    expect(program).toMatch(/U AND V ARE ITS UPPER END/);
  });
});

describe('what a relief cannot do', () => {
  it('a land as high as the die', () => {
    expect(codes(planOf(square(10), { land: 25 }), 'relief-land')[0]?.weight).toBe('stop');
    expect(planOf(square(10), { land: 25 }).die.relief).toBeUndefined();
  });

  it('lean more than the machine: at a corner of constant radius before it does so on the edges', () => {
    const wedge = polygon([0, 0], [20, 0], [20, 12]);
    const conical = planOf(wedge, { angleDeg: 10 });
    expect(codes(conical, 'relief-lean')).toEqual([]);
    const [finding] = codes(planOf(wedge, { angleDeg: 10, corners: 'constant radius' }), 'relief-lean');
    expect(finding?.weight).toBe('stop');
    // 31° between the edges: the wire follows both at once, tan b = tan a / sin(angle / 2).
    const corner = Math.atan2(12, 20);
    expect(finding?.numbers[0]?.value).toBeCloseTo(
      Math.atan(Math.tan(radians(10)) / Math.sin(corner / 2)),
      6,
    );
    expect(Math.hypot(finding?.place?.x ?? 9, finding?.place?.y ?? 9)).toBeLessThan(2);
  });

  it('ask more of the machine than its table says, in angle or in height', () => {
    const { technology } = jobOn([circle(5)]);
    const withMachine = (largestTaperDeg: number, largestHeight: number) =>
      planOf(
        circle(5),
        { angleDeg: 1.5 },
        { technology: { ...technology, machine: { ...technology.machine, largestTaperDeg, largestHeight } } },
      );
    expect(codes(withMachine(1.5, 60), 'relief-lean')).toEqual([]);
    const [steep] = codes(withMachine(1, 60), 'relief-lean');
    expect(steep).toMatchObject({ weight: 'stop', title: 'The wire would lean more than the machine can' });
    expect(steep?.message).toMatch(/leans 1\.5°.* goes to 1°/);
    expect(codes(withMachine(1.5, 60), 'block-too-high')).toEqual([]);
    const [high] = codes(withMachine(1.5, 24), 'block-too-high');
    expect(high?.message).toMatch(/25 mm .* high; the machine of the technology table takes 24 mm/);
  });

  it('leave a thin finger of the die whole down to the exit face', () => {
    const round = [
      ...polygon([0, 0], [20, 0], [20, 10], [10.6, 10]),
      corner(10.6, 4.3, -1),
      ...polygon([10, 4.3], [10, 10], [0, 10]),
    ];
    // 22·tan 1° = 0.384 from both sides of 0.6 mm.
    const [thin, ...others] = codes(planOf(round, { angleDeg: 1 }), 'relief-place');
    expect(others).toEqual([]);
    expect(thin).toMatchObject({ weight: 'decide', title: 'The relief undercuts a thin part of the die' });
    expect(codes(planOf(round, { angleDeg: 0.5 }), 'relief-place')).toEqual([]);
  });

  it('get round an edge that it uses up', () => {
    const finger = polygon([0, 0], [20, 0], [20, 10], [10.6, 10], [10.6, 4], [10, 4], [10, 10], [0, 10]);
    const [place] = codes(planOf(finger, { angleDeg: 1 }), 'relief-place');
    expect(place).toMatchObject({ weight: 'stop', title: 'The relief does not get round here' });
    expect(place?.place?.y).toBeCloseTo(4, 0);
    expect(codes(planOf(finger, { angleDeg: 0.5 }), 'relief-place')).toEqual([]);
  });

  it('break through the wall between two openings of one die', () => {
    const plate = [square(30), square(4, 5, 5), square(4, 9.6, 5)];
    const job = jobOn(plate, { relief: { ...newRelief, kind: 'land and relief', angleDeg: 1 } });
    const plan = createPipeline().plan(job);
    if (!plan.ok) throw new Error(plan.problem.what);
    const meeting = plan.value.findings.filter(({ title }) => title === 'Two reliefs meet');
    // 0.6 − 2·0.06 between the openings, 2·22·tan 1° = 0.768 taken from the wall.
    expect(meeting).toHaveLength(1);
    expect(meeting[0]).toMatchObject({ weight: 'stop', code: 'relief-place' });
    expect(meeting[0]?.place?.x).toBeCloseTo(9.3, 1);
  });

  it('break out of its block, or thin the steel at its edge', () => {
    const inBlock = (outline: { minX: number; minY: number; maxX: number; maxY: number }) => {
      const { setup } = jobOn([square(20)]);
      const made = planOf(square(20), { angleDeg: 5 }, { setup: { ...setup, outlines: { die: outline } } });
      return codes(made, 'relief-place').map(({ weight, title, numbers }) => [
        weight,
        title,
        numbers[0]?.value,
      ]);
    };
    // 22 tan 5° = 1.92475 mm more on each side than at the cutting edge.
    const growth = 22 * Math.tan(radians(5));
    const wide = { minX: -30, minY: -30, maxX: 50, maxY: 50 };
    expect(inBlock(wide)).toEqual([]);
    expect(inBlock({ ...wide, maxX: 26 })).toEqual([
      ['decide', 'The relief leaves little steel at the edge', expect.closeTo(6 - growth, 6)],
    ]);
    expect(inBlock({ ...wide, minY: -1.5 })).toEqual([
      ['stop', 'The relief breaks out of the block', expect.closeTo(1.5 - growth, 6)],
    ]);
  });

  it('cut beside the wanted wall unsaid', () => {
    const steep = planOf(square(20), { angleDeg: 12, corners: 'constant radius' });
    const [finding] = codes(steep, 'relief-surface');
    expect(finding?.weight).toBe('decide');
    const lean = Math.atan(Math.tan(radians(12)) * Math.SQRT2);
    const deeper = 0.15 * (1 / Math.cos(lean) - 1 / Math.cos(radians(12)));
    expect(finding?.numbers[0]?.value).toBeCloseTo(deeper, 6);
    expect(codes(planOf(square(20), { angleDeg: 12 }), 'relief-surface')).toEqual([]);
  });
});

it('a job file from before there was a relief has none', () => {
  const { relief: _relief, ...older } = jobOn([square(10)]);
  const read = readJobFile(JSON.stringify(older));
  expect(read.ok && read.value.relief).toEqual(newRelief);
});
