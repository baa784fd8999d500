import type { Technology, TechnologyPass, TechnologyRow } from './technology';

/**
 * Overcut of 0.020 to 0.050 mm per side (Groover, from memory), its lower half; skims take 0.003 to 0.015 mm (common
 * practice). Ra by pass, from 3.2 µm down to 0.8 µm, is common practice too: VDI 3400 classes 30, 24 and 18.
 */
const cuts = [
  { sparkGap: 0.025, stockLeft: 0.015, roughness: 3.2 },
  { sparkGap: 0.022, stockLeft: 0.004, roughness: 1.6 },
  { sparkGap: 0.02, stockLeft: 0, roughness: 0.8 },
] as const;

/** A skim sweeps more surface in a minute than the rough cut, since it takes little stock (common practice). */
const skimSpeedUp = [1, 1.5, 2] as const;

const heights = [10, 25, 50, 100] as const;

/**
 * Rough rates in mm²/min, by wire and height, at the lower end of common practice: 100 to 200 for 0.25 mm wire in
 * steel, less for thinner wire, and less in blocks that are low or tall.
 */
const roughRates: readonly (readonly [wire: number, rates: readonly number[]])[] = [
  [0.3, [80, 120, 120, 95]],
  [0.25, [65, 100, 100, 80]],
  [0.2, [45, 70, 70, 50]],
  [0.15, [25, 40, 35, 25]],
  [0.1, [12, 18, 15, 10]],
];

/** m/min, common practice. */
const wireSpeed = 8;

const rowOf = (wire: number, height: number, rough: number): TechnologyRow => ({
  wire,
  height,
  passes: cuts.map((cut, k): TechnologyPass => ({ ...cut, rate: rough * (skimSpeedUp[k] ?? 1), wireSpeed })),
});

/**
 * The technology table a new job starts with. Every number is a cautious value of common practice, none is a machine
 * maker's: the shop replaces them by what its own test cuts give.
 */
export const shippedTechnology: Technology = {
  name: 'Starting values',
  blockMaterial: 'hardened tool steel',
  note: 'Common practice, on the cautious side. Replace by what test cuts on your machine give.',
  machine: {
    largestHeight: 200,
    largestTaperDeg: 15,
    upperGuideAbove: 20,
    lowerGuideBelow: 20,
    threadingMinutes: 1,
    hourlyPrice: null,
  },
  rows: roughRates.flatMap(([wire, rates]) => heights.map((height, k) => rowOf(wire, height, rates[k] ?? 1))),
};
