import { Menu } from 'lucide-react';
import { DropdownMenu } from 'radix-ui';
import { Fragment } from 'react';
import type { Command, CommandGroup } from '../state/command';
import { commandList } from '../state/commands/command-list';
import { isMacPage, shortcutText } from '../state/key-map';
import { useApp, useAppState } from '../state/use-app';

const groups: readonly CommandGroup[] = ['File', 'Edit', 'View', 'Cut', 'Review', 'Help'];

/** Every command, with its key. */
export function CommandMenu() {
  return (
    <DropdownMenu.Root modal={false}>
      <DropdownMenu.Trigger className="icon-button" aria-label="Menu">
        <Menu aria-hidden="true" />
      </DropdownMenu.Trigger>
      <DropdownMenu.Content
        className="menu"
        align="start"
        sideOffset={6}
        collisionPadding={8}
        aria-label="Menu"
      >
        {groups.map((group, index) => (
          <Fragment key={group}>
            {index > 0 && <DropdownMenu.Separator className="menu-line" />}
            <DropdownMenu.Group aria-label={group}>
              {commandList
                .filter((command) => command.group === group)
                .map((command) => (
                  <CommandItem key={command.id} command={command} />
                ))}
            </DropdownMenu.Group>
          </Fragment>
        ))}
      </DropdownMenu.Content>
    </DropdownMenu.Root>
  );
}

function CommandItem({ command }: { command: Command }) {
  const app = useApp();
  const label = useAppState((state) => command.label(state));
  const enabled = useAppState((state) => command.enabled(state));
  const key = command.shortcuts[0];
  const Icon = command.icon;
  return (
    <DropdownMenu.Item className="menu-item" disabled={!enabled} onSelect={() => void command.run(app)}>
      <span className="menu-check">{Icon && <Icon aria-hidden="true" />}</span>
      <span className="menu-name">{label}</span>
      {key && <kbd className="menu-aside">{shortcutText(key, isMacPage(window))}</kbd>}
    </DropdownMenu.Item>
  );
}
