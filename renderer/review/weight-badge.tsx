import type { FindingWeight } from '../../core/finding';

export interface WeightBadgeProps {
  readonly weight: FindingWeight;
  readonly rank: number;
  readonly settled: boolean;
}

const shapes: Readonly<Record<FindingWeight, string>> = {
  stop: 'M7.2 1.5H16.8L22.5 7.2V16.8L16.8 22.5H7.2L1.5 16.8V7.2Z',
  decide: 'M12 0.5 23.5 12 12 23.5 0.5 12Z',
  note: 'M12 2A10 10 0 0 1 12 22A10 10 0 0 1 12 2Z',
};

const names: Readonly<Record<FindingWeight, string>> = { stop: 'Stop', decide: 'Decide', note: 'Note' };

/** The mark that the finding carries on the canvas too: shape and colour say its weight, the number which one it is. */
export function WeightBadge({ weight, rank, settled }: WeightBadgeProps) {
  return (
    <svg
      className="weight-badge"
      data-weight={weight}
      data-settled={settled}
      viewBox="0 0 24 24"
      role="img"
      aria-label={`${settled ? 'Settled' : names[weight]}, number ${rank}`}
    >
      <path d={shapes[weight]} />
      <text x="12" y="12.5" className={rank > 99 ? 'weight-long' : ''}>
        {rank}
      </text>
    </svg>
  );
}
