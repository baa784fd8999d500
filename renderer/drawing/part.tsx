import { useId, type ReactNode } from 'react';

export interface PartProps {
  readonly title: string;
  /** A few words at the right of the title. */
  readonly aside?: ReactNode;
  readonly children: ReactNode;
}

/** One part of the pane, under its title. */
export function Part({ title, aside, children }: PartProps) {
  const id = useId();
  return (
    <section className="part" aria-labelledby={id}>
      <header className="part-head">
        <h3 id={id}>{title}</h3>
        {aside !== undefined && <span className="part-aside">{aside}</span>}
      </header>
      {children}
    </section>
  );
}
