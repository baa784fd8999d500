import { CornerPopover } from '../corners/corner-popover';
import { CutDragNote } from '../cuts/cut-drag-note';
import { CutPopover } from '../cuts/cut-popover';
import { useAppState } from '../state/use-app';
import { Legend } from './legend';
import { PictureStage } from './picture-stage';
import { Readout } from './readout';
import { ScaleBar } from './scale-bar';
import { ViewButtons } from './view-buttons';

/** The picture with its key, scale and view buttons around the edges. */
export function CanvasPane() {
  const hasPlan = useAppState((state) => state.made !== null || state.survey !== null);
  return (
    <section className="canvas-pane" aria-label="Drawing">
      <PictureStage />
      {hasPlan && (
        <>
          <ViewButtons />
          <CornerPopover />
          <CutPopover />
          <CutDragNote />
          <div className="canvas-foot">
            <Legend />
            <Readout />
            <ScaleBar />
          </div>
        </>
      )}
    </section>
  );
}
