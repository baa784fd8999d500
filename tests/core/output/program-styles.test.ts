import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Chain } from '../../../core/geometry/contour';
import { newJob } from '../../../core/job';
import { neutralStyle } from '../../../core/neutral-style';
import { formatProgram } from '../../../core/output/format-program';
import { numberText } from '../../../core/output/number-text';
import { programSteps, type ProgramStep } from '../../../core/output/program-steps';
import { programStyleSchema, type ProgramStyle } from '../../../core/program-style';
import { anyStyle } from '../../support/any-style';
import { workOn } from '../../support/own-blocks';
import { exampleParts, planOf } from '../../support/plan-of';
import { readProgram, type ReadMove } from '../../support/read-program';
import { unstyled } from '../../support/unstyled';

const units = ['mm', 'inch'] as const;
const kinds = ['wire centre', 'compensated'] as const;

/** The worked example with a rough and two skims: every kind of step is in it. */
const parts = exampleParts();
const plan = planOf({ ...parts, job: { ...parts.job, passes: newJob('', '').passes } });
const members = plan.pairs.flatMap(({ die, punch }) => [die, punch]);
const stepsOf = (kind: (typeof kinds)[number]) => members.map((member) => programSteps(workOn(member), kind));

/** The neutral style with the most decimals there can be: what the others are held against. */
const finest = {
  ...neutralStyle,
  numbers: { ...neutralStyle.numbers, mmDecimals: 6, inchDecimals: 7 },
};
const finestStep = { mm: 1e-6, inch: 1e-7 } as const;

const read = (steps: readonly ProgramStep[], style: ProgramStyle, unit: 'mm' | 'inch') =>
  readProgram(unstyled(formatProgram(steps, { unit, header: ['a'], draft: null, style }), style, unit));

/** The middle of a move, in the program's unit: says of an arc which way round and how wide it is. */
function middleOf({ from, to, centre, counterClockwise }: ReadMove) {
  if (!from || !centre) return to;
  const angle = (p: { x: number; y: number }) => Math.atan2(p.y - centre.y, p.x - centre.x);
  const full = 2 * Math.PI;
  const turn = ((counterClockwise ? 1 : -1) * (angle(to) - angle(from)) + 2 * full) % full;
  const half = angle(from) + ((counterClockwise ? 1 : -1) * turn) / 2;
  const radius = Math.hypot(from.x - centre.x, from.y - centre.y);
  return { x: centre.x + radius * Math.cos(half), y: centre.y + radius * Math.sin(half) };
}

describe('a program in any style', () => {
  it.each(units)('reads back as the same moves, to its last decimal, in %s', (unit) => {
    fc.assert(
      fc.property(anyStyle, fc.constantFrom(...kinds), (style, kind) => {
        expect(programStyleSchema.safeParse(style).success).toBe(true);
        const last = 10 ** -(unit === 'inch' ? style.numbers.inchDecimals : style.numbers.mmDecimals);
        for (const steps of stepsOf(kind)) {
          const neutral = read(steps, finest, unit);
          const styled = read(steps, style, unit);
          expect(styled.unit).toBe(unit);
          expect(styled.ended).toBe(true);
          expect(styled.stops.map((stop) => [stop.afterMoves, stop.side])).toEqual(
            neutral.stops.map((stop) => [stop.afterMoves, stop.side]),
          );
          expect(styled.moves).toHaveLength(neutral.moves.length);
          styled.moves.forEach((move, index) => {
            const other = neutral.moves[index];
            if (!other) throw new Error('no such move');
            expect([move.kind, move.side, move.offsetNumber]).toEqual([
              other.kind,
              other.side,
              other.offsetNumber,
            ]);
            expect(Math.abs(move.to.x - other.to.x)).toBeLessThan((last + finestStep[unit]) / 2 + 1e-9);
            expect(Math.abs(move.to.y - other.to.y)).toBeLessThan((last + finestStep[unit]) / 2 + 1e-9);
            const [here, there] = [middleOf(move), middleOf(other)];
            // Rounding of both ends, and of the centre or the radius, each in both coordinates.
            expect(Math.hypot(here.x - there.x, here.y - there.y)).toBeLessThan(3 * last);
          });
        }
      }),
      { numRuns: 60 },
    );
  });

  it('says the feed of every pass, or none, and never stands still', () => {
    fc.assert(
      fc.property(anyStyle, fc.constantFrom(...units), (style, unit) => {
        for (const steps of stepsOf('wire centre')) {
          const { moves } = read(steps, style, unit);
          const feeds = moves.slice(1).map(({ feed }) => feed);
          if (!style.feed) expect(new Set(feeds)).toEqual(new Set([null]));
          else for (const feed of feeds) expect(feed).toBeGreaterThan(0);
        }
      }),
      { numRuns: 30 },
    );
  });
});

describe('the words of a style', () => {
  const quarter = Math.tan(Math.PI / 8);
  const along = (chain: Chain): ProgramStep[] => [
    { kind: 'thread', at: chain[0] ?? { x: 0, y: 0 }, hole: null },
    { kind: 'pass', name: 'rough', feed: 4, onTab: false },
    ...chain.slice(1).map((to, i) => ({ kind: 'move', to, bulge: chain[i]?.bulge ?? 0 }) as const),
  ];
  const steps = along([
    { x: 0, y: 0, bulge: 0 },
    { x: 10, y: 0, bulge: 0 },
    { x: 10, y: 5.5, bulge: quarter },
    { x: 9, y: 6.5, bulge: 1 },
    { x: -0.25, y: 6.5, bulge: 0 },
  ]);
  const lines = (change: Partial<ProgramStyle>) =>
    formatProgram(steps, {
      unit: 'mm',
      header: [],
      draft: null,
      style: { ...neutralStyle, ...change },
    }).split('\n');

  it('neutral: everything written out', () => {
    expect(lines({})).toEqual([
      '%',
      'N1 G71',
      'N2 G17 G40 G90',
      'N3 G00 X0.00000 Y0.00000',
      'N4 M00 (THREAD THE WIRE - NO START HOLE FITS HERE)',
      '(ROUGH)',
      'N5 G01 X10.00000 Y0.00000 F4.00',
      'N6 G01 X10.00000 Y5.50000',
      'N7 G03 X9.00000 Y6.50000 I-1.00000 J0.00000',
      'N8 G03 X-0.25000 Y6.50000 I-4.62500 J0.00000',
      'N9 M30',
      '',
    ]);
  });

  it('sparing: what the block before said is left out, the half turn keeps its centre, the quarter has a radius', () => {
    const numbers = {
      mmDecimals: 3,
      inchDecimals: 4,
      point: 'where needed',
      trailingZeros: false,
      leadingZero: false,
    };
    expect(
      lines({
        numbers: numbers as ProgramStyle['numbers'],
        twoDigitWords: false,
        leaveOut: 'motion words and coordinates',
        spaces: false,
        lineNumbers: { first: 10, step: 10, digits: 4, padded: true },
        comments: { signs: 'semicolon', longest: 24, upperCase: false },
        arcs: 'radius',
        feed: null,
        unitWords: 'G20 and G21',
        before: [],
        start: ['{unit} G17', 'G90'],
        thread: ['M01', 'M00'],
        end: ['M02'],
        after: ['%'],
      }),
    ).toEqual([
      'N0010 G21 G17',
      'N0020 G90',
      'N0030G0X0Y0',
      '; thread the wire - no',
      'N0040 M01 ; start hole fits here',
      'N0050 M00',
      '; rough',
      'N0060G1X10Y0',
      'N0070Y5.5',
      'N0080G3X9Y6.5R1',
      'N0090X-.25I-4.625J0',
      'N0100 M02',
      '%',
      '',
    ]);
  });

  it('starts the line numbers again rather than write a longer one', () => {
    const numbered = lines({ lineNumbers: { first: 990, step: 5, digits: 3, padded: false } });
    expect(numbered.filter((line) => line.startsWith('N')).map((line) => line.split(' ')[0])).toEqual([
      'N990',
      'N995',
      'N990',
      'N995',
      'N990',
      'N995',
      'N990',
      'N995',
      'N990',
    ]);
  });
});

describe('numberText', () => {
  const numbers = {
    mmDecimals: 3,
    inchDecimals: 4,
    point: 'always',
    trailingZeros: false,
    leadingZero: true,
  } as const;
  it.each([
    [1500, {}, '1.5'],
    [10000, {}, '10.'],
    [10000, { point: 'where needed' }, '10'],
    [10000, { trailingZeros: true }, '10.000'],
    [-20, {}, '-0.02'],
    [-20, { leadingZero: false }, '-.02'],
    [0, { leadingZero: false }, '0.'],
    [-0, { point: 'implied' }, '0'],
    [0, { leadingZero: false, trailingZeros: true }, '.000'],
    [-20, { point: 'implied' }, '-20'],
  ] as const)('%d steps of 0.001 with %o: %s', (steps, change, text) => {
    expect(numberText(steps, 3, { ...numbers, ...change })).toBe(text);
  });
});
