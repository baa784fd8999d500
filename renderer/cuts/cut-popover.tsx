import { PlacePopover } from '../controls/place-popover';
import { cutPlaces } from '../picture/cut-places';
import { jobOf } from '../state/app-state';
import { nextCutCommand, previousCutCommand } from '../state/commands/step-cuts';
import { sameCut } from '../state/cut-name';
import { useApp, useAppState } from '../state/use-app';
import { CutCard } from './cut-card';

/** The values of the cut that was clicked, beside its start hole on the picture. */
export function CutPopover() {
  const { store } = useApp();
  const name = useAppState((state) => state.openCut);
  const job = useAppState(jobOf);
  const plan = useAppState((state) => state.made?.plan ?? null);
  const middle = useAppState((state) => state.viewport.centre);
  if (!name || !job || !plan) return null;
  const place = cutPlaces(plan).find((one) => sameCut(one, name));
  return (
    <PlacePopover
      title="Cut"
      stepsAlong="start hole"
      at={place?.start ?? place?.at ?? middle}
      beside={18}
      previous={previousCutCommand}
      next={nextCutCommand}
      onClose={() => store.setState({ openCut: null })}
    >
      <CutCard job={job} plan={plan} name={name} />
    </PlacePopover>
  );
}
