import { ChevronLeft, ChevronRight, X } from 'lucide-react';
import { Popover } from 'radix-ui';
import { useRef } from 'react';
import { jobOf } from '../state/app-state';
import { nextCornerCommand, previousCornerCommand } from '../state/commands/step-corners';
import { useApp, useAppState } from '../state/use-app';
import { toScreen } from '../state/viewport';
import { CornerCard } from './corner-card';

/** The rules of the corner that was clicked, beside it on the picture. */
export function CornerPopover() {
  const app = useApp();
  const corner = useAppState((state) => state.openCorner);
  const job = useAppState(jobOf);
  const plan = useAppState((state) => state.made?.plan ?? null);
  const viewport = useAppState((state) => state.viewport);
  const canvasSize = useAppState((state) => state.canvasSize);
  const anchor = useRef<HTMLDivElement>(null);
  if (!corner || !job || !plan) return null;
  const at = toScreen(viewport, canvasSize, corner);
  const close = () => app.store.setState({ openCorner: null, selected: null });
  return (
    <Popover.Root open onOpenChange={(open) => (open ? undefined : close())}>
      <Popover.Anchor ref={anchor} className="corner-anchor" style={{ left: at.x, top: at.y }} />
      <Popover.Content
        className="panel corner-panel"
        side="right"
        sideOffset={14}
        collisionPadding={12}
        // On the picture, never over the review list.
        collisionBoundary={anchor.current?.parentElement}
        sticky="always"
        aria-label="Corner"
        onInteractOutside={(event) => event.preventDefault()}
      >
        <div className="panel-head">
          <h2>Corner</h2>
          <span className="corner-steps">
            <button
              type="button"
              className="icon-button"
              aria-label="Previous corner"
              onClick={() => void previousCornerCommand.run(app)}
            >
              <ChevronLeft aria-hidden="true" />
            </button>
            <button
              type="button"
              className="icon-button"
              aria-label="Next corner"
              onClick={() => void nextCornerCommand.run(app)}
            >
              <ChevronRight aria-hidden="true" />
            </button>
            <Popover.Close className="icon-button" aria-label="Close">
              <X aria-hidden="true" />
            </Popover.Close>
          </span>
        </div>
        <CornerCard job={job} plan={plan} name={corner} />
      </Popover.Content>
    </Popover.Root>
  );
}
