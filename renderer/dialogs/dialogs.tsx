import { useAppState } from '../state/use-app';
import { AboutDialog } from './about-dialog';
import { KeysDialog } from './keys-dialog';
import { UnitsDialog } from './units-dialog';
import { UnsavedDialog } from './unsaved-dialog';

/** Whatever asks or tells something over the window; one at a time. */
export function Dialogs() {
  const waiting = useAppState((state) => state.waiting);
  const unitQuestion = useAppState((state) => state.unitQuestion);
  const dialog = useAppState((state) => state.dialog);
  if (waiting) return <UnsavedDialog file={waiting} />;
  if (unitQuestion) return <UnitsDialog size={unitQuestion} />;
  if (dialog === 'about') return <AboutDialog />;
  if (dialog === 'keys') return <KeysDialog />;
  return null;
}
