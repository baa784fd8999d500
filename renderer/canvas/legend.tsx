import { useApp, useAppState } from '../state/use-app';
import { pictureParts, type PicturePart } from '../state/app-state';

const names: Readonly<Record<PicturePart, string>> = {
  edges: 'Edges of the part',
  'left out': 'Left out',
  lines: 'Other lines',
  repairs: 'Repairs',
  drawing: 'Drawing',
  die: 'Die',
  punch: 'Punch',
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
  const pane = useAppState((state) => state.pane);
  const hasRelief = useAppState(
    ({ made }) => made?.plan.pairs.some(({ die }) => die.relief !== undefined) ?? false,
  );
  const toggle = (part: PicturePart) =>
    store.setState({
      hidden: hidden.includes(part) ? hidden.filter((other) => other !== part) : [...hidden, part],
    });
  return (
    <div className="legend" role="group" aria-label="Parts of the picture">
      {pictureParts[pane]
        .filter((part) => part !== 'relief' || hasRelief)
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
    </div>
  );
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
