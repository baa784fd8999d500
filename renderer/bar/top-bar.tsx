import { CommandButton } from '../controls/command-button';
import { isChanged, jobOf } from '../state/app-state';
import { exportFilesCommand } from '../state/commands/export-files';
import { openFileCommand } from '../state/commands/open-file';
import { redoCommand } from '../state/commands/redo';
import { saveJobCommand } from '../state/commands/save-job';
import { switchThemeCommand } from '../state/commands/switch-theme';
import { undoCommand } from '../state/commands/undo';
import { useAppState } from '../state/use-app';
import { CommandMenu } from './command-menu';
import { UnitSwitch } from './unit-switch';

/** Name of the job and the commands used most. */
export function TopBar() {
  const name = useAppState((state) => jobOf(state)?.name ?? null);
  const changed = useAppState(isChanged);
  const released = useAppState((state) => state.made?.plan.released ?? false);
  const hasJob = name !== null;
  return (
    <header className="top-bar">
      <CommandMenu />
      <h1 className="job-name">
        {name ?? 'Diewright'}
        {changed && <span className="job-changed"> · not saved</span>}
      </h1>
      <div className="bar-group" role="group" aria-label="Edit">
        <CommandButton command={undoCommand} />
        <CommandButton command={redoCommand} />
      </div>
      <span className="bar-space" />
      <UnitSwitch />
      <CommandButton command={switchThemeCommand} />
      <div className="bar-group" role="group" aria-label="Files">
        <CommandButton command={openFileCommand} text="Open" />
        {hasJob && <CommandButton command={saveJobCommand} text="Save" />}
        {hasJob && (
          <CommandButton command={exportFilesCommand} text={released ? 'Export' : 'Export draft'} strong />
        )}
      </div>
    </header>
  );
}
