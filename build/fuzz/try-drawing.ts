import type { RepairSwitch } from '../../core/drawing/drawing';
import { repairSwitches } from '../../core/drawing/drawing';
import { outlineOf, readDrawing } from '../../core/drawing/read-drawing';
import { surveyDrawing } from '../../core/drawing/survey-drawing';
import { sayProblem, type Problem } from '../../core/problem';
import type { DrawingUnit } from '../../core/units';
import { SeededRandom } from './seeded-random';

/**
 * Reads a drawing as a person would who tries everything: in some unit, with some gap tolerance, with some repairs off.
 * Returns in a word what came of it; throws where a problem does not say what a person needs, or a result is none.
 */
export function tryDrawing(bytes: Uint8Array, seed: number): string {
  const raw = readDrawing(bytes);
  if (!raw.ok) return clear(raw.problem);
  const random = new SeededRandom(seed + 77);
  const unit = random.pick<DrawingUnit>(['mm', 'mm', 'mm', 'inch', 'nm', 'm', 'microinch']);
  const gapTolerance = random.pick([0.005, 0.005, 0.1, 50]);
  const repairsOff = random.below(4) === 0 ? [random.pick<RepairSwitch>(repairSwitches)] : [];
  const choice = {
    layers: null,
    colours: null,
    contours: random.below(5) === 0 ? { c1: 'leave out' as const } : {},
  };
  if (raw.value.pieces.length < 5000) surveyDrawing(raw.value, unit);
  const outline = outlineOf(raw.value, unit, gapTolerance, { repairsOff, choice });
  if (!outline.ok) return clear(outline.problem);
  const { contours, box, findings } = outline.value;
  if (contours.length === 0) throw new Error('An outline without contours');
  if (![box.minX, box.minY, box.maxX, box.maxY].every(Number.isFinite)) throw new Error('A box that is none');
  for (const { contour } of contours)
    for (const { x, y, bulge } of contour)
      if (!Number.isFinite(x + y + bulge) || Math.abs(bulge) > 1)
        throw new Error(`A vertex that is none: ${x} ${y} ${bulge}`);
  for (const { message, title } of findings)
    if (message === '' || title === '' || /undefined|NaN|\[object/.test(message))
      throw new Error(`A finding that says nothing: ${message}`);
  return findings.some(({ weight }) => weight !== 'note') ? 'read, with questions' : 'read';
}

function clear(problem: Problem): string {
  const text = sayProblem(problem);
  if (problem.what === '' || problem.whatToDo === '' || /undefined|NaN (mm|in)|\[object/.test(text))
    throw new Error(`A problem that does not say what a person needs: ${text}`);
  return problem.code;
}
