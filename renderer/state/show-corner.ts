import type { CornerName } from './app-state';
import type { App } from './app-store';
import { framed, toScreen } from './viewport';

/** Opens a corner's rules, and moves the picture where the corner is not on it. */
export function showCorner({ store }: App, corner: CornerName): void {
  const { viewport, canvasSize } = store.getState();
  const { x, y } = toScreen(viewport, canvasSize, corner);
  const isSeen = x > 0 && y > 0 && x < canvasSize.width && y < canvasSize.height;
  const { centre } = framed({ x: corner.x, y: corner.y, reach: 1 }, canvasSize);
  store.setState({ openCorner: corner, ...(isSeen ? {} : { viewport: { ...viewport, centre } }) });
}
