import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Chain } from '../../../core/geometry/contour';
import { neutralStyle } from '../../../core/neutral-style';
import { newJob } from '../../../core/job';
import type { Member, Plan } from '../../../core/plan';
import { formatProgram } from '../../../core/output/format-program';
import { programSteps, type ProgramStep } from '../../../core/output/program-steps';
import { programOf, workOn } from '../../support/own-blocks';
import { exampleParts, planOf, roundedRectangle } from '../../support/plan-of';
import { arcRadii, moveLength, readProgram, type ReadMove } from '../../support/read-program';

const units = ['mm', 'inch'] as const;
const styles = ['wire centre', 'compensated'] as const;
const decimals = { mm: 5, inch: 6 } as const;

/** The example with a rough and two skims. */
function threePasses(unit: 'mm' | 'inch', program: 'wire centre' | 'compensated') {
  const parts = exampleParts({ unit, program });
  return { ...parts, job: { ...parts.job, passes: newJob('', '').passes } };
}

function members(plan: Plan): readonly Member[] {
  return plan.pairs.flatMap((pair) => [pair.die, pair.punch]);
}

/** Length of the moves of a program between the lead-in and the stop, without lines that join. */
const lengthOf = (moves: readonly ReadMove[]) => moves.reduce((sum, move) => sum + moveLength(move), 0);

describe('writeProgram', () => {
  // Worked example [D]: path lengths of the die 58.199115 and of the punch 59.612832.
  it.each([
    ['die', 58.199115],
    ['punch', 59.612832],
  ] as const)('writes the %s path with the length of the worked example', (role, length) => {
    const parts = exampleParts();
    const plan = planOf(parts);
    const member = members(plan).find((one) => one.role === role);
    if (!member) throw new Error('no member');
    const program = readProgram(programOf(member, plan, parts.job));
    const [rapid, leadIn, ...rest] = program.moves;
    expect(rapid?.kind).toBe('rapid');
    expect(leadIn?.kind).toBe('line');
    // Main run, lead-out, lead-in to the tab, tab, lead-out.
    const main = rest.slice(0, 9);
    const tab = rest.slice(-2, -1);
    expect(lengthOf([...main, ...tab])).toBeCloseTo(length, 3);
    expect(main.filter((move) => move.kind === 'arc')).toHaveLength(4);
  });

  describe.each(units)('in %s', (unit) => {
    describe.each(styles)('%s', (style) => {
      const parts = threePasses(unit, style);
      const plan = planOf(parts);

      it.each(members(plan).map((member) => [member.id, member] as const))('%s: same moves', (_, member) => {
        const program = readProgram(programOf(member, plan, parts.job));
        const perUnit = unit === 'inch' ? 25.4 : 1;
        const wanted = programSteps(workOn(member), style).flatMap((step) =>
          step.kind === 'move' ? [step.to] : step.kind === 'thread' ? [step.at] : [],
        );
        expect(program.unit).toBe(unit);
        expect(program.ended).toBe(true);
        expect(program.moves.map((move) => move.to)).toEqual(
          wanted.map(({ x, y }) => ({
            x: Number((x / perUnit).toFixed(decimals[unit])) + 0,
            y: Number((y / perUnit).toFixed(decimals[unit])) + 0,
          })),
        );
        for (const move of program.moves.filter((one) => one.kind === 'arc')) {
          const { start, end } = arcRadii(move);
          expect(Math.abs(start - end)).toBeLessThan(2 * Math.SQRT2 * 10 ** -decimals[unit]);
        }
      });

      it('goes fast only with the wire out, and is uncompensated at every stop', () => {
        for (const member of members(plan)) {
          const program = readProgram(programOf(member, plan, parts.job));
          expect(program.moves.map((move) => move.kind === 'rapid').indexOf(true, 1)).toBe(-1);
          expect(program.stops[0]?.afterMoves).toBe(1);
          expect(program.stops[0]?.comment).toContain('THREAD');
          expect(program.stops).toHaveLength(2);
          expect(program.stops[1]?.comment).toContain('SECURE');
          for (const stop of program.stops) expect(stop.side).toBe('off');
          expect(program.moves.at(-1)?.side).toBe('off');
        }
      });
    });
  });

  it('puts die and punch on opposite sides and changes the side with the direction', () => {
    // Travelled counter-clockwise, a die opening is G41 and a punch G42: the wire is inside the one, outside the other.
    const parts = threePasses('mm', 'compensated');
    const plan = planOf(parts);
    const sides = members(plan).map((member) =>
      programSteps(workOn(member), 'compensated').flatMap((step) =>
        step.kind === 'compensate' ? [`${step.side} D${step.offsetNumber}`] : [],
      ),
    );
    expect(sides[0]).toEqual(['left D1', 'right D2', 'left D3', 'left D1', 'right D2', 'left D3']);
    expect(sides[1]).toEqual(['right D1', 'left D2', 'right D3', 'right D1', 'left D2', 'right D3']);
  });

  it('lists the offset table in mm and inch, and only in a compensated program', () => {
    const parts = threePasses('mm', 'compensated');
    const plan = planOf(parts);
    const [die] = members(plan);
    if (!die) throw new Error('no die');
    const text = programOf(die, plan, parts.job);
    expect(text).toContain('(D1 = 0.1650 MM = 0.00650 IN - ROUGH)');
    expect(text).toContain('(D3 = 0.1450 MM = 0.00571 IN - SKIM 2)');
    const centre = readProgram(programOf(die, plan, threePasses('mm', 'wire centre').job));
    for (const word of ['G41', 'G42', 'D']) expect(centre.words).not.toContain(word);
  });

  it('falls back to the wire centre, and says so, where a pass has no contour to offset', () => {
    const parts = threePasses('mm', 'compensated');
    const plan = planOf(parts);
    const [die] = members(plan);
    if (!die) throw new Error('no die');
    const cuts = die.cuts.map((cut) => ({
      ...cut,
      passes: cut.passes.map((pass, index) => (index === 1 ? { ...pass, contour: null } : pass)),
    }));
    const text = programOf({ ...die, cuts }, plan, parts.job);
    expect(readProgram(text).words).not.toContain('G41');
    expect(text).toContain('PATH OF THE WIRE CENTRE');
    expect(text).toContain('CANNOT BE WRITTEN HERE');
  });

  it('marks a draft in the first line and stops before the first move; a released program has neither', () => {
    const parts = exampleParts();
    for (const released of [true, false]) {
      const plan = planOf({ ...parts, released });
      const [die] = members(plan);
      if (!die) throw new Error('no die');
      const text = programOf(die, plan, parts.job);
      const program = readProgram(text);
      expect(program.comments[0]?.startsWith('DRAFT')).toBe(!released);
      expect(program.stops.some((stop) => stop.afterMoves === 0)).toBe(!released);
      expect(text.includes('DRAFT')).toBe(!released);
      expect(text).toContain('29 CFR 1910.217');
      expect(text).toContain('DRY RUN');
    }
  });

  it('is whole where a member cannot be cut, and says why there are no moves', () => {
    const parts = exampleParts();
    const plan = planOf(parts);
    const [die] = members(plan);
    if (!die) throw new Error('no die');
    const text = programOf({ ...die, cuts: [] }, plan, parts.job);
    expect(readProgram(text).moves).toEqual([]);
    expect(text).toContain('NOTHING TO CUT');
  });

  it('threads every start hole anew and cuts the wire in between', () => {
    const parts = exampleParts();
    const plan = planOf(parts);
    const [die] = members(plan);
    const cut = die?.cuts[0];
    const start = cut?.starts[0];
    if (!die || !cut || !start) throw new Error('no cut');
    const second = { ...cut, starts: [{ ...start, x: 1 }] };
    const program = readProgram(programOf({ ...die, cuts: [cut, second] }, plan, parts.job));
    const rapids = program.moves.filter((move) => move.kind === 'rapid');
    expect(rapids.map((move) => move.to.x)).toEqual([0, 1]);
    expect(program.stops.map((stop) => stop.comment.split(' ')[0])).toEqual([
      'THREAD',
      'SECURE',
      'CUT',
      'THREAD',
      'SECURE',
    ]);
    // Every rapid move follows a stop at which the wire is out, or stands at the beginning.
    for (const rapid of rapids.slice(1)) {
      const before = program.moves.indexOf(rapid);
      expect(program.stops.find((stop) => stop.afterMoves === before)?.comment).toContain('CUT THE WIRE');
    }
  });

  it('begins at the lead-in where no start hole fits', () => {
    const parts = exampleParts();
    const plan = planOf(parts);
    const [die] = members(plan);
    if (!die) throw new Error('no die');
    const cuts = die.cuts.map((cut) => ({ ...cut, starts: [null] }));
    const text = programOf({ ...die, cuts }, plan, parts.job);
    expect(readProgram(text).moves[0]?.to).toEqual({ x: 0, y: 0 });
    expect(text).toContain('NO START HOLE FITS');
  });

  it('writes any job name without adding a word to the program', () => {
    const parts = exampleParts();
    const plan = planOf(parts);
    const [die] = members(plan);
    if (!die) throw new Error('no die');
    const plain = readProgram(programOf(die, plan, { ...parts.job, name: '' })).moves;
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 300 }), (name) => {
        const text = programOf(die, plan, { ...parts.job, name });
        expect(readProgram(text).moves).toEqual(plain);
        for (const line of text.split('\n')) expect(line.length).toBeLessThanOrEqual(256);
      }),
      { numRuns: 50 },
    );
  });
});

describe('formatProgram', () => {
  const written = (steps: readonly ProgramStep[], unit: 'mm' | 'inch' = 'mm') =>
    readProgram(formatProgram(steps, { unit, header: [], draft: null, style: neutralStyle }));

  const along = (chain: Chain): ProgramStep[] => [
    { kind: 'thread', at: chain[0] ?? { x: 0, y: 0 }, hole: null },
    ...chain.slice(1).map((to, i) => ({ kind: 'move', to, bulge: chain[i]?.bulge ?? 0 }) as const),
  ];

  it('writes a full circle as two half arcs about its centre', () => {
    const { moves } = written(
      along([
        { x: 5, y: 0, bulge: 1 },
        { x: -5, y: 0, bulge: 1 },
        { x: 5, y: 0, bulge: 0 },
      ]),
    );
    expect(moves.slice(1).map((move) => [move.kind, move.centre, move.counterClockwise])).toEqual([
      ['arc', { x: 0, y: 0 }, true],
      ['arc', { x: 0, y: 0 }, true],
    ]);
  });

  it('writes no move that rounding makes empty and no negative zero', () => {
    const text = formatProgram(
      along([
        { x: 0.000001, y: -0.000001, bulge: 0 },
        { x: -0.000004, y: 0.000004, bulge: 0 },
        { x: 1, y: 0, bulge: 0 },
      ]),
      { unit: 'mm', header: [], draft: null, style: neutralStyle },
    );
    expect(readProgram(text).moves).toHaveLength(2);
    expect(text).not.toMatch(/-0\.0+\b/);
  });

  it('keeps a slow inch feed from becoming zero', () => {
    const [, line] = written(
      [
        { kind: 'thread', at: { x: 0, y: 0 }, hole: null },
        { kind: 'pass', name: 'rough', feed: 0.1, onTab: false },
        { kind: 'move', to: { x: 1, y: 0 }, bulge: 0 },
      ],
      'inch',
    ).moves;
    expect(line?.feed).toBeCloseTo(0.1 / 25.4, 4);
    expect(line?.feed).toBeGreaterThan(0);
  });

  it.each(units)('keeps arcs acceptable and coordinates within half a step, in %s', (unit) => {
    const size = fc.record({
      width: fc.double({ min: 5, max: 300, noNaN: true }),
      height: fc.double({ min: 5, max: 300, noNaN: true }),
      radius: fc.double({ min: 0.05, max: 1.4, noNaN: true }),
    });
    const perUnit = unit === 'inch' ? 25.4 : 1;
    const last = 10 ** -decimals[unit];
    fc.assert(
      fc.property(size, (given) => {
        const loop = roundedRectangle(given, 0);
        const chain = [...loop, ...loop.slice(0, 1).map((vertex) => ({ ...vertex, bulge: 0 }))];
        const { moves } = written(along(chain), unit);
        for (const [index, move] of moves.entries()) {
          const exact = chain[index];
          if (!exact) throw new Error('more moves than vertices');
          expect(Math.abs(move.to.x - exact.x / perUnit)).toBeLessThanOrEqual(last / 2 + 1e-9);
          expect(Math.abs(move.to.y - exact.y / perUnit)).toBeLessThanOrEqual(last / 2 + 1e-9);
          if (move.kind !== 'arc') continue;
          const { start, end } = arcRadii(move);
          expect(Math.abs(start - end)).toBeLessThan(2 * Math.SQRT2 * last);
        }
      }),
      { numRuns: 200 },
    );
  });
});

describe('readProgram, the reader of these tests', () => {
  it.each([
    ['a word outside the list', 'N1 G71\nN2 G04 X1.0000 Y1.0000'],
    ['a number without its point', 'N1 G71\nN2 G01 X1 Y1.0000'],
    ['the radius word', 'N1 G71\nN2 G00 X0.0000 Y0.0000\nN3 G02 X1.0000 Y1.0000 R1.0000'],
    ['an arc without its centre', 'N1 G71\nN2 G00 X0.0000 Y0.0000\nN3 G02 X1.0000 Y1.0000'],
    ['no unit', 'N1 G00 X0.0000 Y0.0000'],
  ])('refuses %s', (_, blocks) => {
    expect(() => readProgram(`%\n${blocks}\nN9 M30\n`)).toThrow();
  });
});
