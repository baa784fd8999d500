import { ToggleGroup } from 'radix-ui';
import type { DisplayUnit } from '../../core/units';
import { useApp, useAppState } from '../state/use-app';

/** Millimetres or inches, everywhere on the screen at once. */
export function UnitSwitch() {
  const { store } = useApp();
  const unit = useAppState((state) => state.unit);
  return (
    <ToggleGroup.Root
      className="switch"
      type="single"
      value={unit}
      aria-label="Unit on display"
      onValueChange={(chosen) => {
        if (chosen !== '') store.setState({ unit: chosen as DisplayUnit });
      }}
    >
      <ToggleGroup.Item className="switch-item" value="mm">
        mm
      </ToggleGroup.Item>
      <ToggleGroup.Item className="switch-item" value="inch">
        inch
      </ToggleGroup.Item>
    </ToggleGroup.Root>
  );
}
