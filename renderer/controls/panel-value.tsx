import { X } from 'lucide-react';
import { Popover } from 'radix-ui';
import type { ReactNode } from 'react';
import { keepOpenWhileTyping } from './value-input';

export interface PanelValueProps {
  readonly label: string;
  /** What the closed control reads. */
  readonly text: string;
  readonly title: string;
  readonly children: ReactNode;
}

/** Words of the job line that open a small panel; it stays in their landmark, for those who hear the page. */
export function PanelValue({ label, text, title, children }: PanelValueProps) {
  return (
    <Popover.Root>
      <Popover.Trigger className="value value-panel" aria-label={`${label}: ${text}`}>
        {text}
      </Popover.Trigger>
      <Popover.Content
        className="panel"
        align="start"
        sideOffset={6}
        collisionPadding={12}
        aria-label={title}
        onEscapeKeyDown={keepOpenWhileTyping}
      >
        <div className="panel-head">
          <h2>{title}</h2>
          <Popover.Close className="icon-button" aria-label="Close">
            <X aria-hidden="true" />
          </Popover.Close>
        </div>
        {children}
      </Popover.Content>
    </Popover.Root>
  );
}
