import { ToggleGroup } from 'radix-ui';
import type { Finding } from '../../core/finding';
import { jobOf } from '../state/app-state';
import { isOpen } from '../../core/assemble-plan';
import { useApp, useAppState } from '../state/use-app';
import { ReleaseState } from './release-state';
import { ReviewRow } from './review-row';

/** Everything a person has to settle before release, worst first, and what is worth knowing. */
export function ReviewList() {
  const findings = useAppState((state) => state.made?.plan.findings ?? none);
  const job = useAppState(jobOf);
  const showAll = useAppState((state) => state.showAll);
  const isStale = useAppState((state) => state.problem !== null);
  if (!job) return null;
  const numbered = findings.map((finding, index) => ({ finding, rank: index + 1 }));
  const shown = showAll ? numbered : numbered.filter(({ finding }) => isOpen(finding, job));
  return (
    <section className="review" aria-label="Review" data-stale={isStale || undefined}>
      <header className="review-head">
        <h2 className="unseen">Review</h2>
        <Filter open={numbered.filter(({ finding }) => isOpen(finding, job)).length} all={findings.length} />
      </header>
      <ReleaseState />
      <ol className="review-rows" aria-label="Review list">
        {shown.map(({ finding, rank }) => (
          <ReviewRow
            key={finding.key}
            finding={finding}
            rank={rank}
            reason={job.settled[finding.key]?.reason ?? null}
          />
        ))}
      </ol>
    </section>
  );
}

const none: readonly Finding[] = [];

function Filter({ open, all }: { open: number; all: number }) {
  const { store } = useApp();
  const showAll = useAppState((state) => state.showAll);
  return (
    <ToggleGroup.Root
      className="switch"
      type="single"
      aria-label="Show"
      value={showAll ? 'all' : 'open'}
      onValueChange={(chosen) => {
        if (chosen !== '') store.setState({ showAll: chosen === 'all' });
      }}
    >
      <ToggleGroup.Item className="switch-item" value="open">
        Open {open}
      </ToggleGroup.Item>
      <ToggleGroup.Item className="switch-item" value="all">
        All {all}
      </ToggleGroup.Item>
    </ToggleGroup.Root>
  );
}
