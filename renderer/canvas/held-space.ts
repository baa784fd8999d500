import type { App } from '../state/app-store';
import { isOwnKey, isTypingIn } from '../state/key-map';

/**
 * Whether Space is held down: then a press takes hold of the picture, whatever lies under the pointer. Where the cut is
 * played Space plays, and it belongs to a button or field that has the focus.
 */
export function watchSpace(app: App, picture: HTMLElement, signal: AbortSignal): () => boolean {
  let isHeld = false;
  const hold = (held: boolean) => {
    isHeld = held;
    if (held) picture.dataset['held'] = '';
    else delete picture.dataset['held'];
  };
  window.addEventListener(
    'keydown',
    (event) => {
      const isElsewhere = isTypingIn(event.target) || isOwnKey(event.target, event.key);
      if (event.key !== ' ' || isElsewhere || app.store.getState().pane === 'cut') return;
      // The page would scroll.
      event.preventDefault();
      hold(true);
    },
    { signal },
  );
  window.addEventListener('keyup', (event) => (event.key === ' ' ? hold(false) : undefined), { signal });
  window.addEventListener('blur', () => hold(false), { signal });
  return () => isHeld;
}
