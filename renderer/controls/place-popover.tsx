import { ChevronLeft, ChevronRight, X } from 'lucide-react';
import { Popover } from 'radix-ui';
import { useRef, type ReactNode } from 'react';
import type { Point } from '../../core/geometry/contour';
import type { Command } from '../state/command';
import { useApp, useAppState } from '../state/use-app';
import { toScreen } from '../state/viewport';

interface PlacePopoverProps {
  readonly title: string;
  /** What the steps go along, as their buttons name it. */
  readonly stepsAlong: string;
  /** The place of the picture that it stands beside. */
  readonly at: Point;
  /** How far beside it, px. */
  readonly beside: number;
  readonly previous: Command;
  readonly next: Command;
  readonly onClose: () => void;
  readonly children: ReactNode;
}

/** A card beside a place on the picture, with steps to the places before and after it. */
export function PlacePopover(props: PlacePopoverProps) {
  const { title, stepsAlong, beside, previous, next, onClose, children } = props;
  const app = useApp();
  const viewport = useAppState((state) => state.viewport);
  const canvasSize = useAppState((state) => state.canvasSize);
  const anchor = useRef<HTMLDivElement>(null);
  const at = toScreen(viewport, canvasSize, props.at);
  return (
    <Popover.Root open onOpenChange={(open) => (open ? undefined : onClose())}>
      <Popover.Anchor ref={anchor} className="corner-anchor" style={{ left: at.x, top: at.y }} />
      <Popover.Content
        className="panel corner-panel"
        side="right"
        sideOffset={beside}
        collisionPadding={12}
        // On the picture, never over the review list.
        collisionBoundary={anchor.current?.parentElement}
        sticky="always"
        aria-label={title}
        onInteractOutside={(event) => event.preventDefault()}
      >
        <div className="panel-head">
          <h2>{title}</h2>
          <span className="corner-steps">
            <button
              type="button"
              className="icon-button"
              aria-label={`Previous ${stepsAlong}`}
              onClick={() => void previous.run(app)}
            >
              <ChevronLeft aria-hidden="true" />
            </button>
            <button
              type="button"
              className="icon-button"
              aria-label={`Next ${stepsAlong}`}
              onClick={() => void next.run(app)}
            >
              <ChevronRight aria-hidden="true" />
            </button>
            <Popover.Close className="icon-button" aria-label="Close">
              <X aria-hidden="true" />
            </Popover.Close>
          </span>
        </div>
        {children}
      </Popover.Content>
    </Popover.Root>
  );
}
