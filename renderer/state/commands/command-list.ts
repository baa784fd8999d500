import type { Command } from '../command';
import { clearSelectionCommand } from './clear-selection';
import { exportFilesCommand } from './export-files';
import { fitViewCommand } from './fit-view';
import { goOnCommand } from './go-on';
import { openFileCommand } from './open-file';
import { redoCommand } from './redo';
import {
  nextMoveCommand,
  nextPauseCommand,
  playCommand,
  previousMoveCommand,
  previousPauseCommand,
  showCutCommand,
} from './replay-cut';
import { saveJobCommand } from './save-job';
import { saveJobAsCommand } from './save-job-as';
import { nextCornerCommand, openCornerCommand, previousCornerCommand } from './step-corners';
import { nextCutCommand, previousCutCommand } from './step-cuts';
import { showAboutCommand, showKeysCommand, showStockCommand, showTechnologyCommand } from './show-dialog';
import { nextFindingCommand, previousFindingCommand } from './step-findings';
import { stopCalculationCommand } from './stop-calculation';
import { switchDieSetCommand, switchInspectionCommand, switchPaneCommand } from './switch-pane';
import { switchThemeCommand } from './switch-theme';
import { switchUnitCommand } from './switch-unit';
import { takeContourCommand } from './take-contour';
import { undoCommand } from './undo';
import { zoomInCommand, zoomOutCommand } from './zoom';

/** Every command, in menu order: menu, toolbar and key map are made from this list. */
export const commandList: readonly Command[] = [
  openFileCommand,
  saveJobCommand,
  saveJobAsCommand,
  exportFilesCommand,
  undoCommand,
  redoCommand,
  openCornerCommand,
  nextCornerCommand,
  previousCornerCommand,
  nextCutCommand,
  previousCutCommand,
  takeContourCommand,
  stopCalculationCommand,
  goOnCommand,
  showTechnologyCommand,
  showStockCommand,
  fitViewCommand,
  zoomInCommand,
  zoomOutCommand,
  switchPaneCommand,
  switchDieSetCommand,
  switchInspectionCommand,
  switchUnitCommand,
  switchThemeCommand,
  showCutCommand,
  playCommand,
  nextMoveCommand,
  previousMoveCommand,
  nextPauseCommand,
  previousPauseCommand,
  nextFindingCommand,
  previousFindingCommand,
  clearSelectionCommand,
  showKeysCommand,
  showAboutCommand,
];
