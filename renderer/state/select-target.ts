import { placeOfFinding } from '../picture/place-of-finding';
import { sameTarget, type Target } from './app-state';
import type { App } from './app-store';
import { framed } from './viewport';

/** Picks out a finding or member; a finding with a place is framed too where `show` says so. */
export function selectTarget({ store }: App, target: Target | null, show = false): void {
  const state = store.getState();
  const plan = state.made?.plan;
  const finding =
    show && target?.kind === 'finding' ? plan?.findings.find(({ key }) => key === target.key) : undefined;
  const place = plan && finding ? placeOfFinding(plan, finding) : null;
  store.setState({
    selected: target,
    ...(place ? { viewport: framed(place, state.canvasSize) } : {}),
  });
}

/** What the pointer is over, on the canvas or in the review list. */
export function hoverTarget({ store }: App, target: Target | null): void {
  if (!sameTarget(store.getState().hovered, target)) store.setState({ hovered: target });
}
