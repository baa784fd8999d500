import type { Place } from '../../core/finding';
import { contourBox } from '../../core/geometry/contour-measures';
import { placeOfFinding } from '../picture/place-of-finding';
import { drawingOf, type AppState, type Pane } from './app-state';
import type { App } from './app-store';
import { sameTarget, type Target } from './target';
import { framed } from './viewport';

/** Picks something out, in the pane that it belongs to; what has a place is framed too where `show` says so. */
export function selectTarget({ store }: App, target: Target | null, show = false): void {
  const state = store.getState();
  const place = show && target ? placeOfTarget(state, target) : null;
  store.setState({
    selected: target,
    ...(target ? { pane: paneOf[target.kind] ?? state.pane } : {}),
    ...(place ? { viewport: framed(place, state.canvasSize) } : {}),
  });
}

/** What the pointer is over, on the canvas or in a list. */
export function hoverTarget({ store }: App, target: Target | null): void {
  if (!sameTarget(store.getState().hovered, target)) store.setState({ hovered: target });
}

const paneOf: Partial<Record<Target['kind'], Pane>> = {
  finding: 'review',
  contour: 'drawing',
  repair: 'drawing',
};

function placeOfTarget(state: AppState, target: Target): Place | null {
  const plan = state.made?.plan;
  const drawing = drawingOf(state);
  switch (target.kind) {
    case 'finding': {
      const finding = plan?.findings.find(({ key }) => key === target.key);
      return plan && finding ? placeOfFinding(plan, finding) : null;
    }
    case 'repair': {
      if (!drawing) return null;
      const size = Math.max(drawing.box.maxX - drawing.box.minX, drawing.box.maxY - drawing.box.minY);
      const repair = drawing.repairs.find(
        ({ kind, place }) => kind === target.repair && place.x === target.x && place.y === target.y,
      );
      const length = repair?.size ?? 0;
      // What has been joined or taken out is looked at from so near that it can be seen; what lay twice as a whole.
      const isSmall = target.repair === 'gap' || target.repair === 'tiny step';
      const reach = isSmall && length > 0 ? 20 * length : Math.max(0.75 * length, size / 40);
      return { x: target.x, y: target.y, reach };
    }
    case 'contour': {
      const found =
        drawing?.contours.find(({ id }) => id === target.id) ??
        drawing?.leftOut.find(({ id }) => id === target.id);
      if (!found) return null;
      const { minX, minY, maxX, maxY } = contourBox(found.contour);
      const reach = Math.max(maxX - minX, maxY - minY) * 0.75;
      return { x: (minX + maxX) / 2, y: (minY + maxY) / 2, reach };
    }
    default:
      return null;
  }
}
