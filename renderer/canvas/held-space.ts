import type { App } from '../state/app-store';

/**
 * Whether Space is held down: then a press takes hold of the picture, whatever lies under the pointer. Where the cut is
 * played Space plays.
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
      // Space ticks boxes and presses buttons: it is the picture's where nothing else has the focus.
      const isHere = event.target === document.body || event.target === picture;
      if (event.key !== ' ' || !isHere || app.store.getState().pane === 'cut') return;
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
