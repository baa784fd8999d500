import type { Box, Point } from '../geometry/contour';
import { leastSquaresFit, type FitProblem } from './best-fit';
import { deviationAt } from './deviation';
import { movedPoint, type Motion } from './motion';

/**
 * A motion from which the fit finds the right place, for points that were measured in another position than drawn: as
 * they are where they lie near the profile, else the best of their middle laid on the profile's, turned in steps of
 * 15°, each fitted roughly with a thinned set of points.
 */
export function coarseStart(problem: FitProblem): Motion {
  const asMeasured: Motion = { dx: 0, dy: 0, turn: 0, about: problem.about };
  const { shiftX, shiftY, turn } = problem.freedom;
  if (!(shiftX || shiftY || turn)) return asMeasured;
  const thinned = { ...problem, points: everyFew(problem.points, roughPoints) };
  const tryFrom = (motion: Motion) => {
    const fitted = leastSquaresFit(thinned, motion, roughRounds);
    return { motion: fitted, error: rms(thinned, fitted) };
  };
  const first = tryFrom(asMeasured);
  if (first.error <= nearShare * problem.arm) return first.motion;
  const middle = middleOf(problem.reference.index.boxes);
  const shift = {
    dx: shiftX ? middle.x - problem.about.x : 0,
    dy: shiftY ? middle.y - problem.about.y : 0,
  };
  const turns = turn ? Array.from({ length: turnSteps }, (_, k) => (2 * Math.PI * k) / turnSteps) : [0];
  return turns
    .map((angle) => tryFrom({ ...asMeasured, ...shift, turn: angle > Math.PI ? angle - 2 * Math.PI : angle }))
    .reduce((best, candidate) => (candidate.error < best.error ? candidate : best), first).motion;
}

const turnSteps = 24;
const roughPoints = 150;
const roughRounds = 12;
/** Points whose deviations are below this share of the part's half size are near enough to start from. */
const nearShare = 0.005;

function rms({ reference, points }: FitProblem, motion: Motion): number {
  const sum = points.reduce(
    (s, point) => s + deviationAt(reference, movedPoint(motion, point)).deviation ** 2,
    0,
  );
  return Math.sqrt(sum / Math.max(1, points.length));
}

function everyFew(points: readonly Point[], most: number): readonly Point[] {
  const step = Math.ceil(points.length / most);
  return points.filter((_, k) => k % step === 0);
}

/** The middle of all boxes' common box. */
function middleOf(boxes: Float64Array): Point {
  const box: { -readonly [K in keyof Box]: Box[K] } = {
    minX: Infinity,
    minY: Infinity,
    maxX: -Infinity,
    maxY: -Infinity,
  };
  for (let i = 0; i < boxes.length; i += 4) {
    box.minX = Math.min(box.minX, boxes[i] as number);
    box.minY = Math.min(box.minY, boxes[i + 1] as number);
    box.maxX = Math.max(box.maxX, boxes[i + 2] as number);
    box.maxY = Math.max(box.maxY, boxes[i + 3] as number);
  }
  return { x: (box.minX + box.maxX) / 2, y: (box.minY + box.maxY) / 2 };
}
