import { memo, useEffect, useRef } from 'react';
import type { Finding } from '../../core/finding';
import { hoverTarget, selectTarget } from '../state/select-target';
import { sameTarget, type Target } from '../state/target';
import { useApp, useAppState } from '../state/use-app';
import { Cures } from './cures';
import { PlacePicture } from './place-picture';
import { Settle } from './settle';
import { WeightBadge } from './weight-badge';

export interface ReviewRowProps {
  readonly finding: Finding;
  readonly rank: number;
  /** Why it was accepted; null while it is open. */
  readonly reason: string | null;
}

/** One finding: weight, place, what it means, what can be done. A click shows the place; pointing marks it there. */
export const ReviewRow = memo(function ReviewRow({ finding, rank, reason }: ReviewRowProps) {
  const app = useApp();
  const row = useRef<HTMLLIElement>(null);
  const target: Target = { kind: 'finding', key: finding.key };
  const isSelected = useAppState((state) =>
    sameTarget(state.selected, { kind: 'finding', key: finding.key }),
  );
  const isHovered = useAppState(({ hovered }) =>
    hovered?.kind === 'member'
      ? hovered.id === finding.memberId
      : sameTarget(hovered, { kind: 'finding', key: finding.key }),
  );
  useEffect(() => {
    // Picked out on the canvas: bring the row into view.
    if (isSelected) row.current?.scrollIntoView({ block: 'nearest' });
  }, [isSelected]);
  return (
    <li
      ref={row}
      className="review-row"
      data-weight={finding.weight}
      data-settled={reason !== null}
      data-selected={isSelected}
      data-hovered={isHovered}
      data-finding={finding.key}
      data-code={finding.code}
      onPointerEnter={() => hoverTarget(app, target)}
      onPointerLeave={() => hoverTarget(app, null)}
    >
      <button
        type="button"
        className="review-main"
        aria-current={isSelected}
        onClick={() => selectTarget(app, target, true)}
        onFocus={() => hoverTarget(app, target)}
        onBlur={() => hoverTarget(app, null)}
      >
        <PlacePicture finding={finding} />
        <span className="review-words">
          <span className="review-title">
            <WeightBadge weight={finding.weight} rank={rank} settled={reason !== null} />
            {finding.title}
          </span>
          <span className="review-message">{finding.message}</span>
        </span>
      </button>
      <div className="review-foot">
        {reason === null && <Cures finding={finding} whole={isSelected} />}
        <Settle finding={finding} reason={reason} />
      </div>
    </li>
  );
});
