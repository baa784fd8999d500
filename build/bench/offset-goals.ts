import type { ManyMeasure, OffsetMeasure } from './measure-offset';
import type { ProofMeasure } from './measure-proof';
import type { Workload } from './workloads';

/** Chord errors of the polygon libraries, mm. */
export const coarseChord = 0.001;
export const fineChord = 0.0001;

/** What one library did on one workload; `note` says why there is nothing to show. */
export interface Reading {
  readonly peer: string;
  readonly chord: number | null;
  readonly measures: readonly OffsetMeasure[];
  readonly note: string;
}

export interface WorkloadResult {
  readonly workload: Workload;
  readonly segments: number;
  readonly own: Reading;
  readonly peers: readonly Reading[];
  readonly many: ManyMeasure;
}

export interface Goal {
  readonly goal: string;
  readonly measured: string;
  readonly met: boolean;
}

/** How many times a library's time is ours: of both sides the one that is better for the library. */
export function timesOurs({ measures }: Reading): number {
  return Math.min(...measures.map(({ ms, ownMs }) => ms / ownMs));
}

export function goalsOf(
  results: readonly WorkloadResult[],
  megabytes: number | null,
  proof: ProofMeasure | null,
): readonly Goal[] {
  return [
    ...results.flatMap(speedGoals),
    ...(['lines', 'lines and arcs'] as const).flatMap((kind) => growthGoal(results, kind)),
    ...results.flatMap(exactness),
    ...results.flatMap(fewSegments),
    ...results.flatMap(sharedPreparation),
    ...(megabytes === null
      ? []
      : [atMost('120,000 lines in under 400 MB, all of the process', megabytes, 400, 'MB')]),
    ...(proof === null
      ? []
      : [atMost(`proof of punch and die of ${proof.segments} segments under 5 s`, proof.seconds, 5, 's')]),
  ];
}

/** Where arcs are cut into chords the goals hold at the finer chord error; on lines at the coarser, which is quicker. */
function speedGoals({ workload, peers, segments }: WorkloadResult): Goal[] {
  const isLines = workload.kind === 'lines';
  const wanted = (peer: string): number => {
    if (!isLines) return peer === 'clipper-lib' ? 100 : ['clipper2-wasm', 'jsts'].includes(peer) ? 20 : 1;
    return peer === 'clipper-lib' && segments >= 12_000 ? 8 : 1;
  };
  return peers
    .filter(({ measures, chord }) => measures.length > 0 && chord !== (isLines ? fineChord : coarseChord))
    .map((reading) => {
      const ratio = timesOurs(reading);
      const factor = wanted(reading.peer);
      return {
        goal: `${workload.name}: ${factor === 1 ? '' : `${factor}× `}faster than ${reading.peer}`,
        measured: `${ratio.toFixed(1)}×`,
        met: ratio >= factor,
      };
    });
}

function growthGoal(results: readonly WorkloadResult[], kind: Workload['kind']): Goal[] {
  const ofKind = results.filter(({ workload }) => workload.kind === kind);
  const [small, large] = [ofKind[0], ofKind.at(-1)];
  if (!small || !large || small === large) return [];
  const growth = (large.own.measures[0]?.ms ?? NaN) / (small.own.measures[0]?.ms ?? NaN);
  const exponent = Math.log(growth) / Math.log(large.segments / small.segments);
  return [atMost(`${kind}: time grows no faster than n^1.15`, exponent, 1.15, '')];
}

const exactness = ({ workload, own }: WorkloadResult): Goal[] => [
  {
    goal: `${workload.name}: error within 1e-6 mm`,
    measured: `${largestError(own).toExponential(1)} mm`,
    met: largestError(own) <= 1e-6,
  },
];

const largestError = ({ measures }: Reading): number => Math.max(...measures.map(({ error }) => error));

const fewSegments = ({ workload, own, segments }: WorkloadResult): Goal[] =>
  workload.kind === 'lines'
    ? []
    : [
        atMost(
          `${workload.name}: at most 1.5× the source's segments`,
          Math.max(...own.measures.map((measure) => measure.segments)) / segments,
          1.5,
          '×',
        ),
      ];

const sharedPreparation = ({ workload, many }: WorkloadResult): Goal[] =>
  many.many.map(({ count, ms }) =>
    atMost(
      `${workload.name}: ${count} offsets cost at most 1 + 0.5·${count - 1}`,
      ms / many.one,
      1 + 0.5 * (count - 1),
      '× one',
    ),
  );

const atMost = (goal: string, value: number, most: number, unit: string): Goal => ({
  goal,
  measured: `${value.toFixed(2)} ${unit}`.trim(),
  met: value <= most,
});
