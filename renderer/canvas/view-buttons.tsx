import { fitViewCommand } from '../state/commands/fit-view';
import { zoomInCommand, zoomOutCommand } from '../state/commands/zoom';
import { CommandButton } from '../controls/command-button';

/** Zoom and fit, in a corner of the picture. */
export function ViewButtons() {
  return (
    <div className="view-buttons" role="group" aria-label="View">
      {[zoomInCommand, zoomOutCommand, fitViewCommand].map((command) => (
        <CommandButton key={command.id} command={command} />
      ))}
    </div>
  );
}
