import type { Drawing } from './drawing/drawing';
import type { OutlineOptions } from './drawing/outline-of';
import type { RawDrawing } from './drawing/raw-drawing';
import { outlineOf, readDrawing } from './drawing/read-drawing';
import { surveyDrawing, type DrawingSurvey } from './drawing/survey-drawing';
import { unitCandidates } from './drawing/unit-candidates';
import { unitFindings } from './drawing/unit-findings';
import type { Finding } from './finding';
import type { Box } from './geometry/contour';
import { drawingBytes } from './job-file';
import type { Job } from './job';
import { done, failed, type Result } from './problem';
import type { Progress } from './progress';
import { remember } from './remember';
import { drawingUnits, type DrawingUnit } from './units';

export interface DrawingStages {
  /** The job's drawing as contours in mm, and what its unit gives to think about. */
  drawing(job: Job, progress: Progress): Result<ReadDrawing>;
  /** What a person needs to see of the drawing to choose its unit, layers, colours and gap tolerance. */
  survey(job: Job, progress: Progress): Result<SurveyedDrawing>;
}

export interface SurveyedDrawing extends DrawingSurvey {
  /** Its contours; null where nothing closes, or as long as the unit is open. */
  readonly drawing: Drawing | null;
}

export interface ReadDrawing {
  readonly drawing: Drawing;
  readonly unitFindings: readonly Finding[];
}

/**
 * From the job's bytes to its contours. Each stage remembers its last result: a change of the gap tolerance joins anew,
 * it does not read anew.
 */
export function drawingStages(): DrawingStages {
  // Who listens changes with every call, what is remembered does not depend on it.
  let progress: Progress = () => undefined;
  const read = remember((content: string) =>
    readDrawing(drawingBytes(content), (part) => progress('Reading the drawing', part / 2)),
  );
  // Choices as text: a person may have clicked a hundred contours, and they come as a new object every time.
  const outline = remember((raw: RawDrawing, unit: DrawingUnit, gap: number, options: string) =>
    outlineOf(raw, unit, gap, JSON.parse(options) as OutlineOptions, (part) =>
      progress('Joining the outline', 1 / 2 + part / 2),
    ),
  );
  const survey = remember((raw: RawDrawing, unit: DrawingUnit | null, options: string, part: Box) =>
    surveyDrawing(raw, unit, (JSON.parse(options) as OutlineOptions).choice, part),
  );
  const outlineIn = (raw: RawDrawing, unit: DrawingUnit, { drawing }: Job): Result<Drawing> =>
    outline(raw, unit, drawing.gapTolerance, optionsOf(drawing));

  return {
    drawing: (job, listener) => {
      progress = listener;
      progress('Reading the drawing', 0);
      const raw = read(job.drawing.content);
      if (!raw.ok) return raw;
      const unit = job.drawing.unit ?? raw.value.statedUnit;
      if (!unit) return unitsNeeded(job.drawing.fileName);
      const drawing = outlineIn(raw.value, unit, job);
      if (!drawing.ok) return drawing;
      const candidates = unitCandidates(raw.value, inUnits(drawing.value.box, unit));
      const isAnswered = job.drawing.unit !== null;
      return done({
        drawing: drawing.value,
        unitFindings: unitFindings(candidates, unit, isAnswered),
      });
    },
    survey: (job, listener) => {
      progress = listener;
      progress('Reading the drawing', 0);
      const raw = read(job.drawing.content);
      if (!raw.ok) return raw;
      const unit = job.drawing.unit ?? raw.value.statedUnit;
      // Where nobody knows the unit, the part is what would be it in mm; where nothing closes, all that is drawn.
      const assumed = unit ?? 'mm';
      const drawing = outlineIn(raw.value, assumed, job);
      const part = drawing.ok ? inUnits(drawing.value.box, assumed) : raw.value.box;
      const surveyed = survey(raw.value, unit, optionsOf(job.drawing), part);
      return done({ ...surveyed, drawing: unit && drawing.ok ? drawing.value : null });
    },
  };
}

const optionsOf = ({ choice, repairsOff }: Job['drawing']): string =>
  JSON.stringify({ choice, repairsOff } satisfies OutlineOptions);

/** A box in mm as one in drawing units. */
function inUnits({ minX, minY, maxX, maxY }: Box, unit: DrawingUnit): Box {
  const { mm } = drawingUnits[unit];
  return { minX: minX / mm, minY: minY / mm, maxX: maxX / mm, maxY: maxY / mm };
}

const unitsNeeded = (fileName: string) =>
  failed(
    'units-needed',
    'The drawing does not say whether it is in mm or inch',
    fileName,
    'Say which unit the drawing is in.',
  );
