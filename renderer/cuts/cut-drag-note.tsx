import { formatLength } from '../../core/units';
import { useAppState } from '../state/use-app';
import { toScreen } from '../state/viewport';
import { refusal } from './cut-drag';

/** Beside what is being dragged: where it is, or why it may not be there. */
export function CutDragNote() {
  const drag = useAppState((state) => state.draggedCut);
  const viewport = useAppState((state) => state.viewport);
  const canvasSize = useAppState((state) => state.canvasSize);
  const unit = useAppState((state) => state.unit);
  if (!drag) return null;
  const at = toScreen(viewport, canvasSize, { x: drag.at.x, y: drag.at.y });
  const place = `x ${formatLength(drag.at.x, unit)}, y ${formatLength(drag.at.y, unit)}`;
  return (
    <div
      className="cut-drag-note"
      role="note"
      data-refused={drag.because !== null}
      style={{ left: at.x + 16, top: at.y + 12 }}
    >
      {drag.because === null ? place : refusal(drag)}
    </div>
  );
}
