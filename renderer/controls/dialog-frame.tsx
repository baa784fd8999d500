import { Dialog } from 'radix-ui';
import type { ReactNode } from 'react';
import { keepOpenWhileTyping } from './value-input';

export interface DialogFrameProps {
  readonly title: string;
  readonly children: ReactNode;
  readonly onClose: () => void;
  /** As wide as the window allows, for a table. */
  readonly isWide?: boolean;
}

/**
 * A dialog over a veil. The veil is our own: the library's locks scrolling by writing a style element, which the
 * content security policy refuses, and this window does not scroll.
 */
export function DialogFrame({ title, children, onClose, isWide = false }: DialogFrameProps) {
  return (
    <Dialog.Root open onOpenChange={(open) => (open ? undefined : onClose())}>
      <Dialog.Portal>
        <div className="veil">
          <Dialog.Content
            className={isWide ? 'dialog dialog-wide' : 'dialog'}
            aria-describedby={undefined}
            onEscapeKeyDown={keepOpenWhileTyping}
            // The library goes from the last control round to the first without scrolling there.
            onFocus={({ target }) => target.scrollIntoView({ block: 'nearest' })}
          >
            <Dialog.Title className="dialog-title">{title}</Dialog.Title>
            {children}
          </Dialog.Content>
        </div>
      </Dialog.Portal>
    </Dialog.Root>
  );
}
