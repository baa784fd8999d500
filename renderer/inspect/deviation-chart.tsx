import { histogram } from '../../core/inspect/histogram';
import { zoneLimits, type ProfileTolerance } from '../../core/inspect/profile-tolerance';
import { formatLength } from '../../core/units';
import { useAppState } from '../state/use-app';

export interface DeviationChartProps {
  readonly deviations: readonly number[];
  readonly zone: ProfileTolerance;
}

const size = { width: 320, height: 96, foot: 16, head: 12 };

/** How the deviations are spread, with the limits of the zone. */
export function DeviationChart({ deviations, zone }: DeviationChartProps) {
  const unit = useAppState((state) => state.unit);
  const { from, step, counts } = histogram(deviations);
  const limits = zoneLimits(zone);
  const low = Math.min(from, limits.low);
  const high = Math.max(from + counts.length * step, limits.high);
  const most = Math.max(1, ...counts);
  const atX = (value: number) => 8 + ((size.width - 16) * (value - low)) / (high - low);
  const floor = size.height - size.foot;
  const words = counts
    .map((count, k) => (count > 0 ? `${count} from ${formatLength(from + k * step, unit)}` : ''))
    .filter((part) => part !== '');
  return (
    <svg
      className="deviation-chart"
      viewBox={`0 0 ${size.width} ${size.height}`}
      role="img"
      aria-label={`Deviations in steps of ${formatLength(step, unit)}: ${words.join(', ')}`}
    >
      {counts.map((count, k) => {
        const tall = ((floor - size.head) * count) / most;
        const left = atX(from + k * step);
        const wide = atX(from + (k + 1) * step) - left;
        return count === 0 ? null : (
          <g key={k}>
            <rect x={left} y={floor - tall} width={wide} height={tall} />
            <text x={left + wide / 2} y={floor - tall - 3}>
              {count}
            </text>
          </g>
        );
      })}
      <path className="chart-floor" d={`M0 ${floor}H${size.width}`} />
      {[limits.low, 0, limits.high].map((value) => (
        <g key={value}>
          <path
            className={value === 0 ? 'chart-zero' : 'chart-limit'}
            d={`M${atX(value)} ${size.head}V${floor}`}
          />
          <text x={Math.min(size.width - 26, Math.max(26, atX(value)))} y={size.height - 4}>
            {formatLength(value, unit)}
          </text>
        </g>
      ))}
    </svg>
  );
}
