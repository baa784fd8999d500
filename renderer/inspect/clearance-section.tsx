import { ToggleGroup } from 'radix-ui';
import { clearanceToleranceOf } from '../../core/inspection-settings';
import type { ClearancePlace } from '../../core/inspect/clearance-place';
import type { ClearanceMap } from '../../core/inspect/clearance-map';
import { formatLength } from '../../core/units';
import { Choice } from '../controls/choice';
import { LengthInput } from '../controls/length-input';
import { Part } from '../drawing/part';
import { jobOf } from '../state/app-state';
import { setInspection } from '../state/edits/set-inspection';
import { inspectedPair } from '../state/inspected-pair';
import { editJob } from '../state/job-edit';
import { setInspect } from '../state/set-inspect';
import { showPlace } from '../state/show-place';
import { useApp, useAppState } from '../state/use-app';
import { noMotion } from '../../core/inspect/motion';
import { OutsideList } from './outside-list';
import { PositionPart } from './position-part';

/** The clearance all round as cut, and what a lamp behind the pair would show. */
export function ClearanceSection() {
  const app = useApp();
  const unit = useAppState((state) => state.unit);
  const clearance = useAppState((state) => state.inspect.clearance);
  const map = clearance?.map ?? null;
  return (
    <>
      <Part title="Clearance as cut" aside={<PairChoice />}>
        <PictureSwitch />
        {map ? (
          <>
            <MapFacts map={map} />
            <GapTimes />
          </>
        ) : (
          <p className="panel-note">This contour has no punch and die to lay over each other.</p>
        )}
      </Part>
      <PositionPart />
      {map && (
        <Part
          title="Outside the tolerance"
          aside={`${formatLength(map.outside, unit)} of ${formatLength(map.perimeter, unit)}`}
        >
          <OutsideList map={map} onShow={(place) => hold(app, place)} />
        </Part>
      )}
    </>
  );
}

function hold(app: ReturnType<typeof useApp>, { at, station }: ClearancePlace): void {
  setInspect(app, { heldStation: station });
  showPlace(app, at);
}

function PairChoice() {
  const app = useApp();
  const pairs = useAppState((state) => state.made?.plan.pairs);
  const pair = useAppState(inspectedPair);
  if (!pairs || !pair) return null;
  return (
    <Choice
      label="Contour"
      value={pair.contourId}
      text={`${pair.contourId}, ${pair.use}`}
      options={pairs.map(({ contourId, use }) => ({ value: contourId, name: contourId, aside: use }))}
      onChoose={(contourId) =>
        setInspect(app, { contourId, motion: noMotion, pointedStation: null, heldStation: null })
      }
    />
  );
}

function PictureSwitch() {
  const app = useApp();
  const picture = useAppState((state) => state.inspect.picture);
  return (
    <ToggleGroup.Root
      className="switch"
      type="single"
      aria-label="Picture of the clearance"
      value={picture}
      onValueChange={(chosen) => chosen && setInspect(app, { picture: chosen as 'map' | 'light' })}
    >
      <ToggleGroup.Item className="switch-item" value="map">
        Clearance map
      </ToggleGroup.Item>
      <ToggleGroup.Item className="switch-item" value="light">
        Light test
      </ToggleGroup.Item>
    </ToggleGroup.Root>
  );
}

/** How many times as wide the light test draws the gap. */
function GapTimes() {
  const app = useApp();
  const { picture, gapTimes } = useAppState((state) => state.inspect);
  if (picture !== 'light') return null;
  return (
    <p className="part-line">
      Gap drawn{' '}
      <Choice
        label="Exaggeration of the gap"
        value={String(gapTimes)}
        text={`${gapTimes} times`}
        options={[1, 2, 5, 10, 20, 50, 100].map((times) => ({
          value: String(times),
          name: `${times} times`,
        }))}
        onChoose={(times) => setInspect(app, { gapTimes: Number(times) })}
      />{' '}
      as wide; contacts are ringed.
    </p>
  );
}

function MapFacts({ map }: { map: ClearanceMap }) {
  const app = useApp();
  const unit = useAppState((state) => state.unit);
  const length = (mm: number) => formatLength(mm, unit);
  return (
    <dl className="facts inspect-facts">
      <dt>Wanted</dt>
      <dd>
        {length(map.wanted)} ± <ToleranceInput wanted={map.wanted} />
      </dd>
      <dt>Least</dt>
      <dd>
        <PlaceLink
          place={map.least}
          words={length(map.least.clearance)}
          onShow={(place) => hold(app, place)}
        />
      </dd>
      <dt>Greatest</dt>
      <dd>
        <PlaceLink
          place={map.greatest}
          words={length(map.greatest.clearance)}
          onShow={(place) => hold(app, place)}
        />
      </dd>
      <dt>Mean</dt>
      <dd>{length(map.mean)}</dd>
      <dt>Outside</dt>
      <dd>
        {length(map.outside)}, {((100 * map.outside) / map.perimeter).toFixed(1)} % of the way round
      </dd>
    </dl>
  );
}

interface PlaceLinkProps {
  readonly place: ClearancePlace;
  readonly words: string;
  readonly onShow: (place: ClearancePlace) => void;
}

function PlaceLink({ place, words, onShow }: PlaceLinkProps) {
  const unit = useAppState((state) => state.unit);
  return (
    <button type="button" className="link" onClick={() => onShow(place)}>
      {words} at x {formatLength(place.at.x, unit)}, y {formatLength(place.at.y, unit)}
    </button>
  );
}

function ToleranceInput({ wanted }: { wanted: number }) {
  const app = useApp();
  const job = useAppState(jobOf);
  if (!job) return null;
  return (
    <LengthInput
      label="Tolerance of the clearance"
      value={clearanceToleranceOf(job.inspection, wanted)}
      onCommit={(clearanceTolerance, turning) =>
        editJob(
          app,
          setInspection,
          {
            change: { clearanceTolerance },
            say: `Clearance tolerance ${formatLength(clearanceTolerance, 'mm')}`,
          },
          turning,
        )
      }
    />
  );
}
