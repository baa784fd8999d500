import { bandNames, bands } from '../../core/inspect/band';
import type { ClearanceMap } from '../../core/inspect/clearance-map';
import { pictureParts, type AppState, type PicturePart } from '../state/app-state';
import type { InspectSection } from '../state/inspect-state';
import { comparedSet } from '../state/compared-set';
import { shownPair } from '../state/shown-pair';
import { useApp, useAppState } from '../state/use-app';

const names: Readonly<Record<PicturePart, string>> = {
  edges: 'Edges of the part',
  'left out': 'Left out',
  lines: 'Other lines',
  repairs: 'Repairs',
  drawing: 'Drawing',
  die: 'Die',
  punch: 'Punch',
  plates: 'Stripper and retainer',
  relief: 'Exit face',
  remainder: 'Remainder',
  path: 'Wire path',
  block: 'Block',
  findings: 'Findings',
  'die block': 'Die block',
  strip: 'Strip',
  pressure: 'Centre of pressure',
  sections: 'Sections',
  'as designed': 'As designed',
  readings: 'Readings',
};

/** The key to the picture; each entry switches its part on and off. */
export function Legend() {
  const { store } = useApp();
  const hidden = useAppState((state) => state.hidden);
  const parts = useAppState(partsInView);
  const hasRelief = useAppState(
    ({ made }) => made?.plan.pairs.some(({ die }) => die.relief !== undefined) ?? false,
  );
  const hasPlates = useAppState(
    ({ made }) => made?.plan.pairs.some(({ plates }) => plates.length > 0) ?? false,
  );
  const toggle = (part: PicturePart) =>
    store.setState({
      hidden: hidden.includes(part) ? hidden.filter((other) => other !== part) : [...hidden, part],
    });
  return (
    <div className="legend" role="group" aria-label="Parts of the picture">
      {parts
        .filter((part) => (part !== 'relief' || hasRelief) && (part !== 'plates' || hasPlates))
        .map((part) => (
          <button
            key={part}
            type="button"
            className="legend-entry"
            aria-pressed={!hidden.includes(part)}
            onClick={() => toggle(part)}
          >
            <Swatch part={part} />
            {names[part]}
          </button>
        ))}
      <BandKey />
    </div>
  );
}

/** What the picture can show just now. */
function partsInView(state: AppState): readonly PicturePart[] {
  const { pane, inspect } = state;
  if (pane !== 'inspect') return pictureParts[pane];
  // With nothing to compare the members themselves are shown.
  const isCompared = shownPair(state) !== null || comparedSet(state) !== null;
  if (inspect.section === 'points' && !isCompared) return inspectParts.measuring;
  if (inspect.section === 'revision' && inspect.revision === null) return memberParts;
  const isLight = inspect.section === 'clearance' && inspect.picture === 'light';
  return isLight ? lightParts : inspectParts[inspect.section];
}

const memberParts: readonly PicturePart[] = ['die', 'punch'];

const lightParts: readonly PicturePart[] = ['readings'];

const inspectParts: Readonly<Record<InspectSection, readonly PicturePart[]>> = {
  clearance: ['die', 'punch', 'as designed', 'readings'],
  points: ['readings'],
  measuring: ['die', 'punch', 'readings'],
  sheets: ['die', 'punch', 'readings'],
  revision: [],
};

function mapInView(state: AppState): ClearanceMap | null {
  const { pane, inspect } = state;
  if (pane !== 'inspect') return null;
  if (inspect.section === 'points') return shownPair(state)?.pair.map ?? null;
  return inspect.section === 'clearance' && inspect.picture === 'map'
    ? (inspect.clearance?.map ?? null)
    : null;
}

/** How the clearance map says what the clearance is, of what there is in it. */
function BandKey() {
  const map = useAppState(mapInView);
  if (!map) return null;
  return bands
    .filter((band) => map.stretches.some((stretch) => stretch.band === band))
    .map((band) => (
      <span key={band} className="legend-entry legend-words">
        <span className={`band band-${band}`} aria-hidden="true" />
        {bandNames[band]}
      </span>
    ));
}

function Swatch({ part }: { part: PicturePart }) {
  return (
    <svg className={`swatch swatch-${part.replace(' ', '-')}`} viewBox="0 0 24 12" aria-hidden="true">
      {part === 'remainder' ? (
        <>
          <rect x="1" y="1" width="22" height="10" />
          <path d="M3 11 11 1M9 11 17 1M15 11 22 2" />
        </>
      ) : part === 'block' || part === 'die block' ? (
        <rect x="1" y="1" width="22" height="10" />
      ) : part === 'pressure' ? (
        <>
          <circle cx="12" cy="6" r="5" fill="none" />
          <path d="M12 6H17A5 5 0 0 1 12 11ZM12 6H7A5 5 0 0 1 12 1Z" />
        </>
      ) : part === 'repairs' ? (
        <circle cx="12" cy="6" r="4" />
      ) : part === 'findings' ? (
        <path d="M12 1 17 6 12 11 7 6Z" />
      ) : (
        <>
          <path d="M1 6H23" />
          {part === 'path' && <path className="swatch-head" d="M16 6 10 2.5V9.5Z" />}
        </>
      )}
    </svg>
  );
}
