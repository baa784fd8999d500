import type { AppState } from './app-state';
import { planBox } from './plan-box';
import { fitted, type Size } from './viewport';

/** The canvas in another size: what was fitted into it is fitted anew, another view keeps its middle and scale. */
export function resized({ made, viewport, canvasSize }: AppState, size: Size): Partial<AppState> {
  if (!made) return { canvasSize: size };
  const box = planBox(made.plan);
  const { centre, scale } = fitted(box, canvasSize);
  const isFitted =
    centre.x === viewport.centre.x && centre.y === viewport.centre.y && scale === viewport.scale;
  return isFitted ? { canvasSize: size, viewport: fitted(box, size) } : { canvasSize: size };
}
