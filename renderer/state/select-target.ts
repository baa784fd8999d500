import { sameTarget, type Target } from './app-state';
import type { App } from './app-store';
import { framed } from './viewport';

/** Picks out a finding or member; a finding with a place is framed too where `show` says so. */
export function selectTarget({ store }: App, target: Target | null, show = false): void {
  const state = store.getState();
  const place =
    show && target?.kind === 'finding'
      ? state.made?.plan.findings.find((finding) => finding.key === target.key)?.place
      : undefined;
  store.setState({
    selected: target,
    ...(place ? { viewport: framed(place, state.canvasSize) } : {}),
  });
}

/** What the pointer is over, on the canvas or in the review list. */
export function hoverTarget({ store }: App, target: Target | null): void {
  if (!sameTarget(store.getState().hovered, target)) store.setState({ hovered: target });
}
