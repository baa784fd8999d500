import { DialogFrame } from '../controls/dialog-frame';
import { commandList } from '../state/commands/command-list';
import { isMacPage, shortcutText } from '../state/key-map';
import { useApp, useAppState } from '../state/use-app';

/** Every command with its keys, and what the mouse does. */
export function KeysDialog() {
  const { store } = useApp();
  const state = useAppState((whole) => whole);
  const isMac = isMacPage(window);
  const close = () => store.setState({ dialog: null });
  return (
    <DialogFrame title="Keys" onClose={close}>
      <dl className="keys" tabIndex={0} role="group" aria-label="Commands and their keys">
        {commandList
          .filter(({ shortcuts }) => shortcuts.length > 0)
          .map((command) => (
            <div key={command.id}>
              <dt>{command.label(state)}</dt>
              <dd>
                {command.shortcuts.map((shortcut) => (
                  <kbd key={shortcut}>{shortcutText(shortcut, isMac)}</kbd>
                ))}
              </dd>
            </div>
          ))}
        {pointerWays.map(([what, how]) => (
          <div key={what}>
            <dt>{what}</dt>
            <dd>{how}</dd>
          </div>
        ))}
      </dl>
      <div className="dialog-buttons">
        <button type="button" className="button button-strong" onClick={close}>
          Close
        </button>
      </div>
    </DialogFrame>
  );
}

const pointerWays = [
  ['Zoom about the pointer', 'wheel or pinch'],
  ['Move the picture', 'drag, or arrow keys on the picture'],
  ['Move it from anywhere', 'Space and drag, or the middle button'],
  ['Copy a table', 'copy with the pointer on it'],
  ['Turn a value', 'arrow up and down in its field'],
] as const;
