import { Check } from 'lucide-react';
import { DropdownMenu } from 'radix-ui';

export interface ChoiceOption<V extends string> {
  readonly value: V;
  readonly name: string;
  /** A few words beside the name. */
  readonly aside?: string;
}

export interface ChoiceProps<V extends string> {
  readonly label: string;
  readonly value: V;
  readonly options: readonly ChoiceOption<V>[];
  readonly onChoose: (value: V) => void;
  /** What the closed control reads where that is not the option's name. */
  readonly text?: string;
}

/**
 * A choice in place: reads like the words around it, opens a menu of the options. The menu stays in the landmark of
 * its words, for those who hear the page.
 */
export function Choice<V extends string>({ label, value, options, onChoose, text }: ChoiceProps<V>) {
  const shown = text ?? options.find((option) => option.value === value)?.name ?? value;
  return (
    <DropdownMenu.Root modal={false}>
      <DropdownMenu.Trigger className="value value-choice" aria-label={`${label}: ${shown}`}>
        {shown}
      </DropdownMenu.Trigger>
      <DropdownMenu.Content
        className="menu"
        align="start"
        sideOffset={4}
        collisionPadding={8}
        aria-label={label}
      >
        <DropdownMenu.RadioGroup value={value} onValueChange={(chosen) => onChoose(chosen as V)}>
          {options.map((option) => (
            <DropdownMenu.RadioItem key={option.value} className="menu-item" value={option.value}>
              <span className="menu-check">
                <DropdownMenu.ItemIndicator>
                  <Check aria-hidden="true" />
                </DropdownMenu.ItemIndicator>
              </span>
              <span className="menu-name">{option.name}</span>
              {option.aside && <span className="menu-aside">{option.aside}</span>}
            </DropdownMenu.RadioItem>
          ))}
        </DropdownMenu.RadioGroup>
      </DropdownMenu.Content>
    </DropdownMenu.Root>
  );
}
