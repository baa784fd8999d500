import { cautions } from '../../core/output/cautions';
import { description, version } from '../../package.json';
import { DialogFrame } from '../controls/dialog-frame';
import { LicenceList } from './licence-list';
import { useApp } from '../state/use-app';

/** What this is, and the cautions. */
export function AboutDialog() {
  const { store } = useApp();
  return (
    <DialogFrame title="About Diewright" onClose={() => store.setState({ dialog: null })}>
      <p>
        Version {version}. {description}
      </p>
      <h3>Cautions</h3>
      <ul className="cautions">
        {cautions.map((caution) => (
          <li key={caution}>{caution}</li>
        ))}
      </ul>
      <LicenceList />
      <p className="panel-note">MIT licence. All work is done on this computer; nothing is sent anywhere.</p>
      <div className="dialog-buttons">
        <button
          type="button"
          className="button button-strong"
          onClick={() => store.setState({ dialog: null })}
        >
          Close
        </button>
      </div>
    </DialogFrame>
  );
}
