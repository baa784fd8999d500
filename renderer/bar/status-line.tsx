import { CommandButton } from '../controls/command-button';
import { stopCalculationCommand } from '../state/commands/stop-calculation';
import { useAppState } from '../state/use-app';

/** What was done last, and how far a calculation is. */
export function StatusLine() {
  const said = useAppState((state) => state.said);
  const progress = useAppState((state) => state.progress);
  return (
    <footer className="status-line">
      <span role="status" aria-label="Done last">
        {said}
      </span>
      {progress && (
        <span className="status-progress">
          {progress.step}
          <progress value={progress.fraction} max={1} aria-label={progress.step} />
          <CommandButton command={stopCalculationCommand} text="Stop" small />
        </span>
      )}
    </footer>
  );
}
