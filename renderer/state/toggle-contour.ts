import type { App } from './app-store';
import { takeContour } from './edits/take-contour';
import { editJob } from './job-edit';

/**
 * Takes a contour that is left out, and leaves one out that is taken. What the rule would do anyway is not written into
 * the job as a choice.
 */
export function toggleContour(app: App, contourId: string): void {
  const { made, history } = app.store.getState();
  const drawing = made?.plan.drawing;
  const chosen = history?.present.drawing.choice.contours[contourId];
  if (!drawing) return;
  if (chosen !== undefined) {
    editJob(app, takeContour, { contourId, choice: null });
    return;
  }
  const isTaken = drawing.contours.some(({ id }) => id === contourId);
  editJob(app, takeContour, { contourId, choice: isTaken ? 'leave out' : 'take' });
}
