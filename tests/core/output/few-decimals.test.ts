import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { neutralStyle } from '../../../core/neutral-style';
import { bulgeOver } from '../../../core/output/bulge-over';
import { roundArc } from '../../../core/output/round-arc';
import { createPipeline } from '../../../core/pipeline';
import type { Plan } from '../../../core/plan';
import type { Job } from '../../../core/job';
import { radians } from '../../../core/units';
import { compensationRoom } from '../../../core/wire/compensation-room';
import { jobOn } from '../../support/dxf-of';
import { angleShape, circle, polygon, roundedRectangle } from '../../support/shapes';
import type { Contour } from '../../../core/geometry/contour';

const programs = ['wire centre', 'compensated'] as const;
const formats = [
  ['mm', 3],
  ['mm', 4],
  ['mm', 5],
  ['inch', 4],
  ['inch', 5],
] as const;

/** A right-angled triangle with a corner of an angle at 0, 0, and the rest to 90° at the other. */
const wedge = (degrees: number): Contour => polygon([0, 0], [20, 0], [20, 20 * Math.tan(radians(degrees))]);

/** A square with one corner opened to nearly straight on. */
const nearlyStraight = (degrees: number): Contour =>
  polygon([0, 0], [20, 0], [20 + 15 * Math.sin(radians(180 - degrees)), 15], [0, 15]);

const shapes: Readonly<Record<string, Contour>> = {
  'corners of 15°, 75° and 90°': wedge(15),
  'corners of 30°, 60° and 90°': wedge(30),
  'two corners of 45°': wedge(45),
  'inside arcs of exactly the reach': roundedRectangle(20, 10, 0.145),
  'no coordinate on the grid': angleShape(12.00041, 5.00033),
  'a circle': circle(5.00071),
};

function planned(contour: Contour, output: Partial<Job['output']>, changes: Partial<Job> = {}): Plan {
  const job = jobOn([contour], changes);
  const plan = createPipeline().plan({ ...job, output: { ...job.output, ...output } });
  if (!plan.ok) throw new Error(plan.problem.what);
  return plan.value;
}

const withDecimals = (decimals: number): Job['output']['style'] => ({
  ...neutralStyle,
  numbers: { ...neutralStyle.numbers, mmDecimals: decimals, inchDecimals: Math.max(4, decimals) },
});

const proofStops = ({ findings }: Plan): string[] =>
  findings.filter(({ code }) => code.startsWith('proof')).map(({ message }) => message);

describe.each(Object.entries(shapes))('with few decimals, %s', (_, contour) => {
  it.each(
    programs.flatMap((program) => formats.map(([unit, decimals]) => [program, unit, decimals] as const)),
  )('passes the proof from the text: %s, %s, %i decimals', (program, unit, decimals) => {
    const plan = planned(contour, { program, unit, style: withDecimals(decimals) });
    expect(proofStops(plan)).toEqual([]);
    for (const { die, punch } of plan.pairs) {
      expect(die.proof.passed && punch.proof.passed).toBe(true);
      // The accuracy of the proof and one and a half last decimals; a tool cut to the wrong side would be 0.3 mm out.
      const step = (unit === 'inch' ? 25.4 : 1) / 10 ** decimals;
      expect(die.proof.allowed).toBeCloseTo(0.0005 + 1.5 * step, 12);
    }
  });
});

it.each(Object.entries(shapes))(
  'with few decimals and arcs by R, %s passes the proof from the text',
  (_, contour) => {
    for (const program of programs) {
      for (const decimals of [3, 4]) {
        const plan = planned(contour, { program, style: { ...withDecimals(decimals), arcs: 'radius' } });
        expect(proofStops(plan)).toEqual([]);
      }
    }
  },
);

describe('a contour for a control that offsets by itself', () => {
  // Exact geometry: a fillet of radius r in a corner of angle a leaves r (1 / sin(a / 2) − 1) of stock. Reach 0.145.
  it.each([
    [3, 0.0025],
    [4, 0.0005],
    [5, 0.0005],
  ])(
    'with %i decimals leaves what a fillet %f mm larger than the reach leaves, and that is known',
    (decimals, room) => {
      expect(compensationRoom(10 ** -decimals)).toBeCloseTo(room, 12);
      const plan = planned(wedge(30), { program: 'compensated', style: withDecimals(decimals) });
      const left = (0.145 + room) * (1 / Math.sin(radians(15)) - 1);
      const found = plan.pairs[0]?.die.proof.remainder ?? 0;
      expect(Math.abs(found - left)).toBeLessThan(0.0002 + 1.5 * 10 ** -decimals * 3);
      expect(proofStops(plan)).toEqual([]);
    },
  );

  it.each([0.145, 0.1455, 0.146])(
    'whose fillets are %f mm, about the reach itself, explains what it leaves',
    (radius) => {
      const inside = { rule: 'radius', radius } as const;
      const { corners } = jobOn([wedge(30)]);
      const changes = { corners: { ...corners, die: { ...corners.die, inside } } };
      for (const decimals of [3, 5]) {
        const plan = planned(wedge(30), { program: 'compensated', style: withDecimals(decimals) }, changes);
        expect(proofStops(plan)).toEqual([]);
      }
    },
  );

  it.each([165, 170, 177, 179, 179.5])('can tell a corner of %f° whatever its decimals', (degrees) => {
    for (const decimals of [3, 4, 5]) {
      const plan = planned(nearlyStraight(degrees), {
        program: 'compensated',
        style: withDecimals(decimals),
      });
      expect(proofStops(plan)).toEqual([]);
    }
  });
});

describe('many short straights, as flattened curves have them', () => {
  const flattened = polygon(
    ...Array.from({ length: 120 }, (_, k): [number, number] => {
      const [round, wave] = [(k * Math.PI) / 60, (k * Math.PI) / 20];
      return [10 * Math.cos(round) + 3 * Math.cos(wave), 10 * Math.sin(round) + 3 * Math.sin(wave)];
    }),
  );

  it.each([3, 4, 5])('%i decimals: the control is told corners that it can offset', (decimals) => {
    const plan = planned(flattened, { program: 'compensated', style: withDecimals(decimals) });
    expect(proofStops(plan)).toEqual([]);
    const inside = plan.pairs[0]?.die.cuts[0]?.passes.at(-1)?.contour?.main.flatMap(({ cut }) => cut) ?? [];
    expect(inside.length).toBeGreaterThan(100);
  });

  it('corners of any kind and number pass, whatever the decimals', () => {
    const corners = fc.array(
      fc.record({
        turn: fc.double({ min: 0, max: 0.6, noNaN: true }),
        radius: fc.integer({ min: 60, max: 140 }),
      }),
      { minLength: 3, maxLength: 24 },
    );
    fc.assert(
      fc.property(corners, fc.constantFrom(3, 4, 5), (given, decimals) => {
        const contour = polygon(
          ...given.map(({ turn, radius }, k): [number, number] => {
            const at = ((k + turn) / given.length) * 2 * Math.PI;
            return [(radius / 10) * Math.cos(at), (radius / 10) * Math.sin(at)];
          }),
        );
        const plan = planned(contour, { program: 'compensated', style: withDecimals(decimals) });
        expect(proofStops(plan)).toEqual([]);
      }),
      { numRuns: 20, seed: 11 },
    );
  });
});

// Exact geometry: an end is off by at most √2 / 2 of a step, a grid point nearest to a centre by as much again.
it('an arc whose ends are rounded keeps its radius within two and a half steps, however flat it is', () => {
  const place = fc.double({ min: -100, max: 100, noNaN: true });
  const turn = fc.double({ min: 0.02, max: Math.PI, noNaN: true });
  const reach = fc.double({ min: 100, max: 3000, noNaN: true });
  fc.assert(
    fc.property(place, place, turn, reach, place, (x, y, angle, radius, start) => {
      const ends = [start, start + angle].map((at) => ({
        x: x + radius * Math.cos(at),
        y: y + radius * Math.sin(at),
      }));
      const [from, to] = ends as [(typeof ends)[0], (typeof ends)[0]];
      const grid = (p: typeof from) => ({ x: Math.round(p.x), y: Math.round(p.y) });
      const [a, b] = [grid(from), grid(to)];
      const apart = (p: typeof from, q: typeof from) => Math.hypot(q.x - p.x, q.y - p.y);
      const bulge = bulgeOver(Math.tan(angle / 4), apart(from, to), apart(a, b));
      const centre = roundArc(a, b, bulge);
      fc.pre(centre !== null);
      if (!centre) return;
      expect(Math.hypot(centre.x, centre.y)).toBeGreaterThan(radius - 2.5);
    }),
    { numRuns: 5000, seed: 5 },
  );
});
