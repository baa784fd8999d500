import { FileUp } from 'lucide-react';
import { cautions } from '../../core/output/cautions';
import { CommandButton } from '../controls/command-button';
import { openFileCommand } from '../state/commands/open-file';

/** Nothing is open yet: what this does and how to begin. */
export function EmptyPage() {
  return (
    <main className="empty">
      <FileUp className="empty-icon" aria-hidden="true" />
      <h2>From a customer’s outline to a punch and a die that fit</h2>
      <p>
        Drop a drawing (DXF, SVG, or a list of points) or a job file anywhere in this window, or open one.
      </p>
      <CommandButton command={openFileCommand} text="Open a drawing or job" strong />
      <ul className="cautions">
        {cautions.map((caution) => (
          <li key={caution}>{caution}</li>
        ))}
      </ul>
    </main>
  );
}
