import type { DrawingSize } from '../../core/drawing/drawing';
import { drawingUnits, mmPerInch, type DisplayUnit, type DrawingUnit } from '../../core/units';
import { DialogFrame } from '../controls/dialog-frame';
import { jobOf } from '../state/app-state';
import { setDrawing } from '../state/edits/set-drawing';
import { editJob } from '../state/job-edit';
import { useApp, useAppState } from '../state/use-app';

/** The units that a drawing without one is likely to be in. */
const candidates: readonly { unit: DrawingUnit; name: string }[] = [
  { unit: 'mm', name: 'Millimetres' },
  { unit: 'inch', name: 'Inches' },
  { unit: 'mil', name: 'Thousandths of an inch' },
  { unit: 'cm', name: 'Centimetres' },
];

/** Asks what the numbers of the drawing mean, by how large the part would be. */
export function UnitsDialog({ size }: { size: DrawingSize }) {
  const app = useApp();
  const fileName = useAppState((state) => jobOf(state)?.drawing.fileName ?? '');
  return (
    <DialogFrame title="How large is the part?" onClose={() => app.store.setState({ unitQuestion: null })}>
      <p>
        {fileName} states no unit. Choose the size that the part has; nothing is worked out before you do.
      </p>
      <ul className="sizes">
        {candidates.map(({ unit, name }) => (
          <li key={unit}>
            <button
              type="button"
              className="size"
              onClick={() => {
                app.store.setState({ unitQuestion: null });
                editJob(app, setDrawing, { unit });
              }}
            >
              <span className="size-name">{name}</span>
              <span className="size-mm">{sizeText(size, unit, 'mm')}</span>
              <span className="size-inch">{sizeText(size, unit, 'inch')}</span>
            </button>
          </li>
        ))}
      </ul>
    </DialogFrame>
  );
}

/** "23.5 × 12 mm", to four figures: enough to know a part by. */
function sizeText(size: DrawingSize, unit: DrawingUnit, display: DisplayUnit): string {
  const perUnit = drawingUnits[unit].mm / (display === 'inch' ? mmPerInch : 1);
  const side = (units: number) => String(Number((units * perUnit).toPrecision(4)));
  return `${side(size.width)} × ${side(size.height)} ${display === 'mm' ? 'mm' : 'in'}`;
}
