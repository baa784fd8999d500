import type { GapBin } from '../../core/drawing/gap-histogram';
import { formatLength } from '../../core/units';
import { hoverTarget } from '../state/select-target';
import { useApp, useAppState } from '../state/use-app';

export interface GapChartProps {
  readonly bins: readonly GapBin[];
  /** mm. */
  readonly gapTolerance: number;
  readonly onChoose: (mm: number) => void;
}

/**
 * Bars over the gaps' sizes in steps of 1, 2, 5; those below the tolerance are filled. Pointing at a bar marks its ends
 * in the picture, choosing it sets the tolerance so that these gaps and all smaller ones are closed.
 */
export function GapChart({ bins, gapTolerance, onChoose }: GapChartProps) {
  const unit = useAppState((state) => state.unit);
  const most = Math.max(...bins.map(({ count }) => count));
  return (
    <div className="gap-chart" role="group" aria-label="Ends by their distance from the nearest other end">
      {bins.map((bin, i) => (
        <Bar
          key={bin.from}
          bin={bin}
          number={i}
          // Counts differ by thousands: a bar's height grows with their logarithm.
          share={bin.count === 0 ? 0 : (1 + Math.log2(bin.count)) / (1 + Math.log2(most))}
          gapTolerance={gapTolerance}
          onChoose={onChoose}
        />
      ))}
      <div className="gap-scale" aria-hidden="true">
        {marks.map((mm) => (
          <span key={mm}>{formatLength(mm, unit)}</span>
        ))}
      </div>
    </div>
  );
}

/** mm; each stands where its bar begins (style sheet). */
const marks = [0.001, 0.1, 5];

/** 12, 340, 1K: the bars are narrow. */
const briefly = new Intl.NumberFormat('en', { notation: 'compact', maximumFractionDigits: 0 });

interface BarProps extends Pick<GapChartProps, 'gapTolerance' | 'onChoose'> {
  readonly bin: GapBin;
  readonly number: number;
  readonly share: number;
}

function Bar({ bin, number, share, gapTolerance, onChoose }: BarProps) {
  const app = useApp();
  const unit = useAppState((state) => state.unit);
  const isClosed = gapTolerance >= bin.to;
  const isTolerance = gapTolerance >= bin.from && !isClosed;
  const mark = () => hoverTarget(app, { kind: 'gaps', bar: number });
  const unmark = () => hoverTarget(app, null);
  return (
    <div className="gap-bar" data-closed={isClosed} data-tolerance={isTolerance}>
      {bin.count > 0 && (
        <button
          type="button"
          title={`${bin.count} ends`}
          aria-label={`${bin.count} ends ${formatLength(bin.from, unit)} to ${formatLength(bin.to, unit)} apart: join up to there`}
          onPointerEnter={mark}
          onPointerLeave={unmark}
          onFocus={mark}
          onBlur={unmark}
          onClick={() => onChoose(bin.to)}
        >
          <span className="gap-count">{briefly.format(bin.count)}</span>
          <svg viewBox="0 0 10 100" preserveAspectRatio="none" aria-hidden="true">
            <rect x="1" width="8" y={100 - share * 100} height={share * 100} />
          </svg>
        </button>
      )}
    </div>
  );
}
