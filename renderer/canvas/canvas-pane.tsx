import { CornerPopover } from '../corners/corner-popover';
import { CutDragNote } from '../cuts/cut-drag-note';
import { CutPopover } from '../cuts/cut-popover';
import type { AppState } from '../state/app-state';
import { useAppState } from '../state/use-app';
import { Legend } from './legend';
import { PictureStage } from './picture-stage';
import { Readout } from './readout';
import { ScaleBar } from './scale-bar';
import { ViewButtons } from './view-buttons';

/** The light test is dark in both themes. */
const showsLight = ({ pane, inspect }: AppState): boolean =>
  pane === 'inspect' && inspect.section === 'clearance' && inspect.picture === 'light';

/** The picture with its key, scale and view buttons around the edges. */
export function CanvasPane() {
  const hasPlan = useAppState((state) => state.made !== null || state.survey !== null);
  const isLampOn = useAppState(showsLight);
  return (
    <section className="canvas-pane" aria-label="Drawing" data-lamp={isLampOn || undefined}>
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
