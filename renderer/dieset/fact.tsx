import type { ReactNode } from 'react';

export interface FactProps {
  readonly label: string;
  readonly children: ReactNode;
  /** The rule or book that the number comes from. */
  readonly source?: string;
  /** The number breaks its rule. */
  readonly isBad?: boolean;
}

/** One number of the die set with its rule or source under it. */
export function Fact({ label, children, source, isBad = false }: FactProps) {
  return (
    <div className="fact" data-bad={isBad || undefined}>
      <dt>{label}</dt>
      <dd>{children}</dd>
      {source !== undefined && <dd className="fact-source">{source}</dd>}
    </div>
  );
}

/** A list of facts. */
export function Facts({ label, children }: { label: string; children: ReactNode }) {
  return (
    <dl className="fact-list" aria-label={label}>
      {children}
    </dl>
  );
}
