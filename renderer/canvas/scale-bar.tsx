import { formatLength, mmPerInch, type DisplayUnit } from '../../core/units';
import { useAppState } from '../state/use-app';

/** A bar of a round length, between about 60 and 150 pixels long. */
export function ScaleBar() {
  const scale = useAppState((state) => state.viewport.scale);
  const unit = useAppState((state) => state.unit);
  const { length, pixels } = roundBar(scale, unit);
  return (
    <svg className="scale-bar" width={pixels + 2} height={24} role="img" aria-label={`Scale: ${length}`}>
      <path d={`M1 14V22H${pixels + 1}V14`} />
      <text x={pixels / 2 + 1} y={16}>
        {length}
      </text>
    </svg>
  );
}

/** The longest bar of 1, 2 or 5 times a power of ten that fits into 150 pixels. */
export function roundBar(scale: number, unit: DisplayUnit): { length: string; pixels: number } {
  const perUnit = unit === 'inch' ? mmPerInch : 1;
  const most = 150 / scale / perUnit;
  const power = 10 ** Math.floor(Math.log10(most));
  const factor = [5, 2, 1].find((candidate) => candidate * power <= most) ?? 1;
  const mm = factor * power * perUnit;
  return { length: formatLength(mm, unit), pixels: mm * scale };
}
