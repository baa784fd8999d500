import { hoverTarget } from '../state/select-target';
import type { Target } from '../state/target';
import { useApp } from '../state/use-app';

export interface TickRowProps {
  readonly label: string;
  readonly name: string;
  readonly aside: string;
  readonly count: number;
  readonly isTicked: boolean;
  /** What lights up in the picture while it is pointed at. */
  readonly target: Target;
  readonly onToggle: () => void;
  /** A colour, as style sheets write it. */
  readonly swatch?: string;
}

/** A row with a tick: what it is, and how many pieces it has. */
export function TickRow(props: TickRowProps) {
  const { label, name, aside, count, isTicked, target, onToggle, swatch } = props;
  const app = useApp();
  return (
    <li
      className="plain-row"
      onPointerEnter={() => hoverTarget(app, target)}
      onPointerLeave={() => hoverTarget(app, null)}
    >
      <label className="tick">
        <input
          type="checkbox"
          aria-label={label}
          checked={isTicked}
          onChange={onToggle}
          onFocus={() => hoverTarget(app, target)}
          onBlur={() => hoverTarget(app, null)}
        />
        {swatch !== undefined && (
          <svg className="tint" viewBox="0 0 12 12" aria-hidden="true">
            <rect width="12" height="12" rx="2" fill={swatch} />
          </svg>
        )}
        <span className="cut-short" title={name}>
          {name}
        </span>
      </label>
      <span className="panel-note">{aside}</span>
      <span className="count">{count}</span>
    </li>
  );
}
