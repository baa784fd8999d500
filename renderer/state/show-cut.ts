import type { CutPlace } from '../picture/cut-places';
import type { App } from './app-store';
import type { CutName } from './cut-name';
import { toScreen } from './viewport';

/** Opens the card of a cut, and moves the picture where its start is not on it. */
export function showCut({ store }: App, place: CutPlace): void {
  const { viewport, canvasSize } = store.getState();
  const centre = place.start ?? place.at;
  const { x, y } = toScreen(viewport, canvasSize, { x: centre.x, y: centre.y });
  const isSeen = x > 0 && y > 0 && x < canvasSize.width && y < canvasSize.height;
  const openCut: CutName = { cutId: place.cutId, stretch: place.stretch };
  store.setState({
    pane: 'review',
    openCut,
    openCorner: null,
    ...(isSeen ? {} : { viewport: { ...viewport, centre: { x: centre.x, y: centre.y } } }),
  });
}
