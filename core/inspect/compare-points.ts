import type { Point, Region } from '../geometry/contour';
import { tolerance } from '../geometry/tolerance';
import { leastSquaresFit, minimumZoneFit, type FitProblem, type Freedom } from './best-fit';
import { coarseStart } from './coarse-start';
import { deviationAt, referenceOf } from './deviation';
import { backMotion, movedPoint, type Motion } from './motion';
import { outliersAmong } from './outliers';
import { pointsBox } from './points-box';
import { isWithin, neededWidth, zoneMiddle, type ProfileTolerance } from './profile-tolerance';

export interface MeasuredPoint extends Point {
  readonly id: string;
}

/** How measured points are laid over the profile. */
export interface FitChoice {
  readonly method: 'least squares' | 'minimum zone' | 'as measured';
  readonly freedom: Freedom;
  /** Whether points that stand apart take part in the fit and the verdict. */
  readonly outliers: 'keep' | 'leave out';
}

export interface ComparedPoint {
  readonly id: string;
  /** Where it was measured, and where the fit lays it. */
  readonly measured: Point;
  readonly at: Point;
  readonly foot: Point;
  readonly nx: number;
  readonly ny: number;
  /** mm, positive where there is too much material. */
  readonly deviation: number;
  readonly isOutlier: boolean;
  readonly passes: boolean;
}

export interface Comparison {
  /** What the fit did to the points. */
  readonly motion: Motion;
  /** Where the measured part lies in its own measurement: the motion taken back. */
  readonly found: Motion;
  readonly points: readonly ComparedPoint[];
  /** Points that count: all, or all but the outliers. */
  readonly counted: number;
  readonly least: number;
  readonly greatest: number;
  readonly mean: number;
  readonly rms: number;
  /** Width of the narrowest profile zone, disposed as the tolerance is, that holds all that count, mm. */
  readonly profile: number;
  readonly passes: boolean;
  /** Index of the point that needs the widest zone; −1 where there is none. */
  readonly worst: number;
}

/**
 * Measured points against the true profile. The points that stand apart are found with a fit that leaves them out
 * (repeated until the same ones stay out); the fit that counts then takes them in or not, as chosen.
 */
export function comparePoints(
  points: readonly MeasuredPoint[],
  profile: Region,
  material: 'inside' | 'outside',
  choice: FitChoice,
  zone: ProfileTolerance,
): Comparison {
  const problem = problemOf(points, profile, material, choice);
  const start = coarseStart(problem);
  const isOutlier = steadyOutliers(problem, start);
  const counts = (k: number): boolean => choice.outliers === 'keep' || isOutlier[k] === false;
  const motion = fitted({ ...problem, points: points.filter((_, k) => counts(k)) }, start, choice, zone);
  const compared = points.map((point, k): ComparedPoint => {
    const at = movedPoint(motion, point);
    const off = deviationAt(problem.reference, at);
    return {
      id: point.id,
      measured: { x: point.x, y: point.y },
      at,
      ...off,
      isOutlier: isOutlier[k] === true,
      passes: isWithin(zone, off.deviation, tolerance.samePoint),
    };
  });
  return { motion, found: backMotion(motion), points: compared, ...summed(compared, counts, zone) };
}

function problemOf(
  points: readonly Point[],
  profile: Region,
  material: 'inside' | 'outside',
  { method, freedom }: FitChoice,
): FitProblem {
  const { minX, minY, maxX, maxY } = pointsBox(points);
  const about = { x: (minX + maxX) / 2, y: (minY + maxY) / 2 };
  const still = { shiftX: false, shiftY: false, turn: false };
  return {
    reference: referenceOf(profile, material),
    points,
    freedom: method === 'as measured' ? still : freedom,
    about,
    arm: points.reduce<number>(
      (arm, { x, y }) => Math.max(arm, Math.hypot(x - about.x, y - about.y)),
      tolerance.distanceBound,
    ),
  };
}

function steadyOutliers(problem: FitProblem, start: Motion): readonly boolean[] {
  let flags: readonly boolean[] = problem.points.map(() => false);
  for (let round = 0; round < mostRounds; round++) {
    const kept = problem.points.filter((_, k) => flags[k] === false);
    const motion = leastSquaresFit({ ...problem, points: kept }, start);
    const next = outliersAmong(
      problem.points.map((point) => deviationAt(problem.reference, movedPoint(motion, point)).deviation),
    );
    if (next.every((flag, k) => flag === flags[k])) break;
    flags = next;
  }
  return flags;
}

const mostRounds = 20;

function fitted(problem: FitProblem, start: Motion, choice: FitChoice, zone: ProfileTolerance): Motion {
  if (choice.method === 'as measured') return start;
  const squares = leastSquaresFit(problem, start);
  return choice.method === 'least squares' ? squares : minimumZoneFit(problem, squares, zoneMiddle(zone));
}

function summed(points: readonly ComparedPoint[], counts: (k: number) => boolean, zone: ProfileTolerance) {
  const counted = points.filter((_, k) => counts(k));
  const deviations = counted.map(({ deviation }) => deviation);
  const n = Math.max(1, deviations.length);
  const middle = zoneMiddle(zone);
  let worst = -1;
  for (const [k, { deviation }] of points.entries()) {
    if (!counts(k)) continue;
    const off = Math.abs(deviation - middle);
    if (worst < 0 || off > Math.abs((points[worst] as ComparedPoint).deviation - middle)) worst = k;
  }
  return {
    counted: counted.length,
    least: deviations.reduce((a, b) => Math.min(a, b), Infinity),
    greatest: deviations.reduce((a, b) => Math.max(a, b), -Infinity),
    mean: deviations.reduce((sum, d) => sum + d, 0) / n,
    rms: Math.sqrt(deviations.reduce((sum, d) => sum + d * d, 0) / n),
    profile: neededWidth(zone, deviations),
    passes: counted.every(({ passes }) => passes),
    worst,
  };
}
