import type { Point } from '../geometry/contour';
import { tolerance } from '../geometry/tolerance';
import { deviationAt, type Reference } from './deviation';
import { linearMinimax, type LinearValue } from './linear-minimax';
import { movedPoint, type Motion } from './motion';
import { solved } from './solve-linear';

/** Which motions a fit may use. */
export interface Freedom {
  readonly shiftX: boolean;
  readonly shiftY: boolean;
  readonly turn: boolean;
}

export interface FitProblem {
  readonly reference: Reference;
  readonly points: readonly Point[];
  readonly freedom: Freedom;
  /** Turns are about this point, and small where `arm` (mm) times the turn is small. */
  readonly about: Point;
  readonly arm: number;
}

/**
 * The motion of the points that makes the sum of their squared deviations least, found from a start by Gauss and
 * Newton's steps, damped where they don't help (Levenberg and Marquardt). Deviations are exact distances to the
 * profile, so near the end each step squares the error. What the points say nothing about (turning on a circle) stays.
 */
export function leastSquaresFit(problem: FitProblem, start: Motion, rounds = 60): Motion {
  let motion = start;
  let rows = rowsOf(problem, motion);
  let sum = squares(rows);
  let damping = 0;
  for (let round = 0; round < rounds; round++) {
    const step = dampedStep(rows, damping);
    if (!step || Math.hypot(...step) < tolerance.samePoint / 10) break;
    const next = stepped(problem, motion, step);
    const there = rowsOf(problem, next);
    if (squares(there) < sum) {
      [motion, rows, sum] = [next, there, squares(there)];
      damping /= 10;
    } else {
      // No better although nearly undamped: at the bottom, as far as doubles can tell.
      if (damping > hopeless) break;
      damping = Math.max(10 * damping, firstDamping);
    }
  }
  return motion;
}

/**
 * The motion of the points that makes the largest deviation from `middle` (mm; 0 for a zone even on both sides) least:
 * the narrowest profile zone that holds them all. Each step solves the linear program of the deviations to first
 * order, no farther than that can be trusted.
 */
export function minimumZoneFit(problem: FitProblem, start: Motion, middle: number): Motion {
  let motion = start;
  let rows = rowsOf(problem, motion);
  let worst = largest(rows, middle);
  let reach = 4 * worst;
  // Every round wins more than half of what it promised or looks nearer by: a few dozen settle any part. Points that
  // belong to another part altogether would go on for as long as rounding promises anything.
  for (let round = 0; round < mostRounds && reach > tolerance.distanceBound / 100; round++) {
    const { step, least } = linearMinimax(
      rows.flatMap((row) => bothSides(row, middle)),
      reach,
    );
    const gain = worst + least;
    if (gain <= tolerance.samePoint + worst * tolerance.cancelled) break;
    const next = stepped(problem, motion, step);
    const there = rowsOf(problem, next);
    const won = worst - largest(there, middle);
    if (won > 0) [motion, rows, worst] = [next, there, worst - won];
    reach = won > gain / 2 ? reach * 2 : reach / 4;
  }
  return motion;
}

/** Rounds of the narrowest zone. */
const mostRounds = 100;

/** Damping relative to the curvature: the first try, and from where on a step would be shorter than any digit. */
const firstDamping = 0.001;
const hopeless = 1e12;

/** A deviation and how it changes with each free motion. */
interface Row {
  readonly deviation: number;
  readonly gradient: readonly number[];
}

function rowsOf({ reference, points, freedom, about, arm }: FitProblem, motion: Motion): readonly Row[] {
  const centre = { x: about.x + motion.dx, y: about.y + motion.dy };
  return points.map((point) => {
    const at = movedPoint(motion, point);
    const { deviation, nx, ny } = deviationAt(reference, at);
    const turning = ((at.x - centre.x) * ny - (at.y - centre.y) * nx) / arm;
    return {
      deviation,
      gradient: [
        ...(freedom.shiftX ? [nx] : []),
        ...(freedom.shiftY ? [ny] : []),
        ...(freedom.turn ? [turning] : []),
      ],
    };
  });
}

function stepped({ freedom, arm }: FitProblem, motion: Motion, step: readonly number[]): Motion {
  const parts = [...step];
  const dx = motion.dx + (freedom.shiftX ? (parts.shift() ?? 0) : 0);
  const dy = motion.dy + (freedom.shiftY ? (parts.shift() ?? 0) : 0);
  const turn = motion.turn + (freedom.turn ? (parts.shift() ?? 0) / arm : 0);
  return { ...motion, dx, dy, turn };
}

const squares = (rows: readonly Row[]): number =>
  rows.reduce((sum, { deviation }) => sum + deviation * deviation, 0);

const largest = (rows: readonly Row[], middle: number): number =>
  rows.reduce((most, { deviation }) => Math.max(most, Math.abs(deviation - middle)), 0);

/** −|deviation − middle| as the least of two linear values. */
const bothSides = ({ deviation, gradient }: Row, middle: number): readonly LinearValue[] => [
  { value: deviation - middle, gradient },
  { value: middle - deviation, gradient: gradient.map((g) => -g) },
];

/** Normal equations with a damped diagonal; the diagonal's floor keeps still what no point determines. */
function dampedStep(rows: readonly Row[], damping: number): readonly number[] | null {
  const [first] = rows;
  if (!first || first.gradient.length === 0) return null;
  const matrix = first.gradient.map((_, i) =>
    first.gradient.map((_entry, k) =>
      rows.reduce((sum, { gradient }) => sum + (gradient[i] as number) * (gradient[k] as number), 0),
    ),
  );
  const right = first.gradient.map((_, i) =>
    rows.reduce((sum, { deviation, gradient }) => sum - deviation * (gradient[i] as number), 0),
  );
  const floor = tolerance.distanceBound * Math.max(...matrix.map((row, i) => row[i] as number));
  return solved(
    matrix.map((row, i) =>
      row.map((value, k) => (i === k ? value * (1 + damping) + floor * (1 + damping) : value)),
    ),
    right,
  );
}
