import { PlacePopover } from '../controls/place-popover';
import { jobOf } from '../state/app-state';
import { nextCornerCommand, previousCornerCommand } from '../state/commands/step-corners';
import { useApp, useAppState } from '../state/use-app';
import { CornerCard } from './corner-card';

/** The rules of the corner that was clicked, beside it on the picture. */
export function CornerPopover() {
  const { store } = useApp();
  const corner = useAppState((state) => state.openCorner);
  const job = useAppState(jobOf);
  const plan = useAppState((state) => state.made?.plan ?? null);
  if (!corner || !job || !plan) return null;
  return (
    <PlacePopover
      title="Corner"
      stepsAlong="corner"
      at={corner}
      beside={14}
      previous={previousCornerCommand}
      next={nextCornerCommand}
      onClose={() => store.setState({ openCorner: null, selected: null })}
    >
      <CornerCard job={job} plan={plan} name={corner} />
    </PlacePopover>
  );
}
