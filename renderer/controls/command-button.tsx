import { Tooltip } from 'radix-ui';
import type { Command } from '../state/command';
import { isMacPage, shortcutText } from '../state/key-map';
import { useApp, useAppState } from '../state/use-app';

export interface CommandButtonProps {
  readonly command: Command;
  /** Words beside the icon; without them the command's label is its name and tooltip only. */
  readonly text?: string;
  readonly strong?: boolean;
  readonly small?: boolean;
}

/** A command as a button: icon, tooltip with its key, off where it can't run. */
export function CommandButton({ command, text, strong = false, small = false }: CommandButtonProps) {
  const app = useApp();
  const label = useAppState((state) => command.label(state));
  const enabled = useAppState((state) => command.enabled(state));
  const key = command.shortcuts[0];
  const Icon = command.icon;
  return (
    <Tooltip.Root>
      <Tooltip.Trigger asChild>
        <button
          type="button"
          className={`${text ? 'button' : 'icon-button'}${strong ? ' button-strong' : ''}${small ? ' button-small' : ''}`}
          aria-label={text ? undefined : label}
          // Stays in the tab order and keeps its tooltip while it is off.
          aria-disabled={!enabled}
          onClick={() => {
            if (enabled) void command.run(app);
          }}
        >
          {Icon && <Icon aria-hidden="true" />}
          {text}
        </button>
      </Tooltip.Trigger>
      <Tooltip.Portal>
        <Tooltip.Content className="tooltip" sideOffset={6} collisionPadding={8}>
          {label}
          {key && <kbd>{shortcutText(key, isMacPage(window))}</kbd>}
        </Tooltip.Content>
      </Tooltip.Portal>
    </Tooltip.Root>
  );
}
