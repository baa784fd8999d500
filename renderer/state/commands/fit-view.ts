import { Maximize } from 'lucide-react';
import type { Box } from '../../../core/geometry/contour';
import type { AppState } from '../app-state';
import type { Command } from '../command';
import { linesBox } from '../lines-box';
import { dieSetBox } from '../die-set-box';
import { planBox } from '../plan-box';
import { fitted } from '../viewport';

export const fitViewCommand: Command = {
  id: 'fit',
  group: 'View',
  label: () => 'Show everything',
  shortcuts: ['F', 'Home'],
  icon: Maximize,
  enabled: (state) => wholeBox(state) !== null,
  run: ({ store }) => {
    const box = wholeBox(store.getState());
    if (box) store.setState(({ canvasSize }) => ({ viewport: fitted(box, canvasSize) }));
  },
};

/** Around what the picture is about: the tools, the die set, or the sheet as it came. */
function wholeBox({ made, survey, pane }: AppState): Box | null {
  if (made && pane === 'die-set') return dieSetBox(made.plan);
  const sheet = survey && linesBox(survey.lines);
  return made && (pane !== 'drawing' || !sheet) ? planBox(made.plan) : sheet;
}
