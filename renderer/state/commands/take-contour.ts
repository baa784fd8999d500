import { drawingOf, type AppState } from '../app-state';
import type { Command } from '../command';
import { toggleContour } from '../toggle-contour';

export const takeContourCommand: Command = {
  id: 'take-contour',
  group: 'Edit',
  label: (state) => {
    const id = selectedContour(state);
    if (id === null) return 'Leave the selected contour out, or take it';
    const isTaken = drawingOf(state)?.contours.some((contour) => contour.id === id) ?? false;
    return isTaken ? `Leave contour ${id} out` : `Take contour ${id}`;
  },
  shortcuts: ['X'],
  enabled: (state) => selectedContour(state) !== null,
  run: (app) => {
    const id = selectedContour(app.store.getState());
    if (id !== null) toggleContour(app, id);
  },
};

const selectedContour = ({ selected }: AppState): string | null =>
  selected?.kind === 'contour' ? selected.id : null;
