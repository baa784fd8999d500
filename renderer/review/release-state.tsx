import { CircleCheck, CircleDashed } from 'lucide-react';
import { formatLength } from '../../core/units';
import { jobOf } from '../state/app-state';
import { isOpen } from '../../core/assemble-plan';
import { useAppState } from '../state/use-app';

/** How far the job is from its release, in one line and one bar. */
export function ReleaseState() {
  const made = useAppState((state) => state.made);
  const job = useAppState(jobOf);
  const problem = useAppState((state) => state.problem);
  const unit = useAppState((state) => state.unit);
  if (!made || !job || problem) return null;
  const { largestGouge, largestRemainder } = made.plan.summary;
  const weighty = made.plan.findings.filter(({ weight }) => weight !== 'note');
  const left = weighty.filter((finding) => isOpen(finding, job)).length;
  const proofsFailed = made.plan.pairs
    .flatMap(({ die, punch }) => [die, punch])
    .filter(({ proof }) => !proof.passed).length;
  return (
    <div className="release" data-released={made.plan.released}>
      <p>
        {made.plan.released ? <CircleCheck aria-hidden="true" /> : <CircleDashed aria-hidden="true" />}
        {made.plan.released ? 'Released: no DRAFT mark on the programs.' : words(left, proofsFailed)}
      </p>
      {weighty.length > 0 && (
        <progress
          value={weighty.length - left}
          max={weighty.length}
          aria-label={`${weighty.length - left} of ${weighty.length} settled`}
        />
      )}
      <p className="proof">
        Proof by a second method: cuts {formatLength(largestGouge, unit)} into a member at most, leaves{' '}
        {formatLength(largestRemainder, unit)} at most.
      </p>
    </div>
  );
}

function words(left: number, proofsFailed: number): string {
  const parts = [];
  if (left > 0) parts.push(`${left} to settle before release`);
  if (proofsFailed > 0) parts.push(`${proofsFailed} ${proofsFailed === 1 ? 'proof' : 'proofs'} failed`);
  return parts.length > 0 ? parts.join(', ') : 'Not released yet';
}
