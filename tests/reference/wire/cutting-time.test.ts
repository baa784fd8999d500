import { describe, expect, it } from 'vitest';
import { newLead } from '../../../core/cut-settings';
import { newRelief } from '../../../core/die/relief-rules';
import type { Job } from '../../../core/job';
import { createPipeline } from '../../../core/pipeline';
import { shopValues } from '../../../core/shop-values';
import { cutTimes } from '../../../core/wire/cut-times';
import { jobOn } from '../../support/dxf-of';
import { jobPass } from '../../support/job-pass';
import { roundedRectangle } from '../../support/shapes';

// Exact geometry: blank 20 × 10 with r 0.5, wire 0.25, gap 0.025: the die's path is 19.7 × 9.7 with r 0.35,
// 58.199115 mm long; 25 mm high that is 1454.978 mm², which take 9.69985 min at 150 mm²/min.
const blank = (change: Partial<Job>): Job =>
  jobOn([roundedRectangle(20, 10, 0.5)], {
    stock: { material: 'cold-rolled-half-hard', thickness: 1 },
    passes: [jobPass({ sparkGap: 0.025, rate: 150, wireSpeed: 10 })],
    // What is cut twice at the ends of the tab would come on top.
    lead: { ...newLead, overlap: 0 },
    ...change,
  });

function timesOf(job: Job) {
  const plan = createPipeline().plan(job);
  if (!plan.ok) throw new Error(plan.problem.what);
  return cutTimes(plan.value, shopValues(job));
}

describe('cutting time', () => {
  it('is the cut area over the rate: 1454.978 mm² at 150 mm²/min take 9.69985 min', () => {
    const job = blank({ blocks: { die: 25, punch: 50 } });
    const [die] = timesOf(job).members;
    const [rough] = die?.passes ?? [];
    if (!die || !rough) throw new Error('no pass');
    expect(rough.cutLength).toBeCloseTo(58.199115, 6);
    expect(rough.area - rough.leadLength * 25).toBeCloseTo(1454.978, 3);
    expect(rough.minutes - (rough.leadLength * 25) / 150).toBeCloseTo(9.69985, 5);
    expect(rough.wire).toBeCloseTo(10 * rough.minutes, 9);
    expect(die.minutes).toBeCloseTo(
      rough.minutes + die.threadings * job.technology.machine.threadingMinutes,
      9,
    );
  });

  it('counts the set, and its price by the hour', () => {
    const job = blank({});
    const machine = {
      ...job.technology.machine,
      threadingMinutes: 0,
      hourlyPrice: { amount: 90, currency: 'EUR' },
    };
    const { members, set } = timesOf({ ...job, technology: { ...job.technology, machine } });
    expect(members.map(({ memberId }) => memberId)).toEqual(['blank-c1-die', 'blank-c1-punch']);
    expect(set.minutes).toBeCloseTo((members[0]?.minutes ?? NaN) + (members[1]?.minutes ?? NaN), 9);
    // 90 an hour is 1.5 a minute.
    expect(set.price).toBeCloseTo(1.5 * set.minutes, 9);
    expect(timesOf(job).set.price).toBeNull();
  });

  it('takes twice as long in a block twice as high, and as long as a typed feed says', () => {
    const low = timesOf(blank({ blocks: { die: 25, punch: 50 } })).members[0]?.passes[0];
    const high = timesOf(blank({ blocks: { die: 50, punch: 50 } })).members[0]?.passes[0];
    expect((high?.minutes ?? NaN) / (low?.minutes ?? NaN)).toBeCloseTo(2, 9);
    const typed = timesOf(blank({ passes: [jobPass({ sparkGap: 0.025, feed: 2 })] })).members[0]?.passes[0];
    expect(typed?.minutes).toBeCloseTo(((typed?.cutLength ?? NaN) + (typed?.leadLength ?? NaN)) / 2, 9);
  });

  // Exact geometry: from the path's length p the surface widens to p + 2π g at the exit face, g = h tan a, and is
  // h / cos a high along the wire; the rate is that of the rough cut. Chords in the corners are a little shorter.
  it('counts a taper halfway up, and a relief as the height below the land', () => {
    const angleDeg = 2;
    const slant = Math.cos((angleDeg * Math.PI) / 180);
    const pathOf = (offset: number) => 2 * (19 + 9) + 2 * Math.PI * (0.5 - offset);
    const growth = (height: number) => height * Math.tan((angleDeg * Math.PI) / 180);
    const taper = timesOf(blank({ relief: { ...newRelief, kind: 'one tapered cut', angleDeg } })).members[0];
    const [whole] = taper?.passes ?? [];
    const halfway = pathOf(0.15 / slant) + Math.PI * growth(25);
    expect(whole?.cutLength).toBeCloseTo(halfway, 2);
    expect(whole?.area).toBeCloseTo((halfway + (whole?.leadLength ?? 0)) * (25 / slant), 1);
    expect(whole?.minutes).toBeCloseTo(((halfway + (whole?.leadLength ?? 0)) * 25) / 150, 3);

    const below = timesOf(blank({ relief: { ...newRelief, kind: 'land and relief', angleDeg } })).members[0];
    const [upright, relief] = below?.passes ?? [];
    const beyond = pathOf(0.15 / slant) + Math.PI * growth(22);
    expect(upright?.cutLength).toBeCloseTo(58.199115, 6);
    expect(relief?.cutLength).toBeCloseTo(beyond, 2);
    expect(relief?.area).toBeCloseTo((beyond + (relief?.leadLength ?? 0)) * (22 / slant), 1);
    expect(below?.threadings).toBe((timesOf(blank({})).members[0]?.threadings ?? NaN) + 1);
    expect(below?.minutes).toBeGreaterThan((upright?.minutes ?? NaN) + (relief?.minutes ?? NaN));
  });
});
