import { drawingOf, jobOf } from './app-state';
import type { App } from './app-store';
import { takeContour } from './edits/take-contour';
import { editJob } from './job-edit';

/**
 * Takes a contour that is left out, and leaves one out that is taken. What the rule would do anyway is not written into
 * the job as a choice.
 */
export function toggleContour(app: App, contourId: string): void {
  const state = app.store.getState();
  const drawing = drawingOf(state);
  const chosen = jobOf(state)?.drawing.choice.contours[contourId];
  if (!drawing) return;
  if (chosen !== undefined) {
    editJob(app, takeContour, { contourId, choice: null });
    return;
  }
  const isTaken = drawing.contours.some(({ id }) => id === contourId);
  editJob(app, takeContour, { contourId, choice: isTaken ? 'leave out' : 'take' });
}
