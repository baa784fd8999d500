import { ChevronLeft, ChevronRight, X } from 'lucide-react';
import { Popover } from 'radix-ui';
import { useRef } from 'react';
import { cutPlaces } from '../picture/cut-places';
import { jobOf } from '../state/app-state';
import { nextCutCommand, previousCutCommand } from '../state/commands/step-cuts';
import { useApp, useAppState } from '../state/use-app';
import { sameCut } from '../state/cut-name';
import { toScreen } from '../state/viewport';
import { CutCard } from './cut-card';

/** The values of the cut that was clicked, beside its start hole on the picture. */
export function CutPopover() {
  const app = useApp();
  const name = useAppState((state) => state.openCut);
  const job = useAppState(jobOf);
  const plan = useAppState((state) => state.made?.plan ?? null);
  const viewport = useAppState((state) => state.viewport);
  const canvasSize = useAppState((state) => state.canvasSize);
  const anchor = useRef<HTMLDivElement>(null);
  if (!name || !job || !plan) return null;
  const place = cutPlaces(plan).find((one) => sameCut(one, name));
  const centre = place?.start ?? place?.at ?? viewport.centre;
  const at = toScreen(viewport, canvasSize, { x: centre.x, y: centre.y });
  const close = () => app.store.setState({ openCut: null });
  return (
    <Popover.Root open onOpenChange={(open) => (open ? undefined : close())}>
      <Popover.Anchor ref={anchor} className="corner-anchor" style={{ left: at.x, top: at.y }} />
      <Popover.Content
        className="panel corner-panel"
        side="right"
        sideOffset={18}
        collisionPadding={12}
        // On the picture, never over the review list.
        collisionBoundary={anchor.current?.parentElement}
        sticky="always"
        aria-label="Cut"
        onInteractOutside={(event) => event.preventDefault()}
      >
        <div className="panel-head">
          <h2>Cut</h2>
          <span className="corner-steps">
            <button
              type="button"
              className="icon-button"
              aria-label="Previous start hole"
              onClick={() => void previousCutCommand.run(app)}
            >
              <ChevronLeft aria-hidden="true" />
            </button>
            <button
              type="button"
              className="icon-button"
              aria-label="Next start hole"
              onClick={() => void nextCutCommand.run(app)}
            >
              <ChevronRight aria-hidden="true" />
            </button>
            <Popover.Close className="icon-button" aria-label="Close">
              <X aria-hidden="true" />
            </Popover.Close>
          </span>
        </div>
        <CutCard job={job} plan={plan} name={name} />
      </Popover.Content>
    </Popover.Root>
  );
}
