import { CircleCheck, CircleDashed } from 'lucide-react';
import type { Plan } from '../../core/plan';
import { formatLength, type DisplayUnit } from '../../core/units';
import { jobOf } from '../state/app-state';
import { isOpen } from '../../core/assemble-plan';
import { useAppState } from '../state/use-app';
import { membersOf } from '../../core/wire/members-of';

/** How far the job is from its release, in one line and one bar. */
export function ReleaseState() {
  const made = useAppState((state) => state.made);
  const job = useAppState(jobOf);
  const problem = useAppState((state) => state.problem);
  const unit = useAppState((state) => state.unit);
  if (!made || !job || problem) return null;
  const { proved, released } = made.plan;
  const weighty = made.plan.findings.filter(({ weight }) => weight !== 'note');
  const left = weighty.filter((finding) => isOpen(finding, job)).length;
  const proofsFailed = membersOf(made.plan).filter(({ proof }) => proved && !proof.passed).length;
  return (
    <div className="release" data-released={released}>
      <p>
        {released ? <CircleCheck aria-hidden="true" /> : <CircleDashed aria-hidden="true" />}
        {released ? 'Released: no DRAFT mark on the programs.' : words(left, proofsFailed)}
      </p>
      {weighty.length > 0 && (
        <progress
          value={weighty.length - left}
          max={weighty.length}
          aria-label={`${weighty.length - left} of ${weighty.length} settled`}
        />
      )}
      <p className="proof" role="status">
        {proved
          ? proofWords(made.plan, unit)
          : 'Proof by a second method is still running: no release before it.'}
      </p>
    </div>
  );
}

/** The verdict, and beside it how exact it is. */
function proofWords({ summary, pairs }: Plan, unit: DisplayUnit): string {
  const say = (mm: number) => formatLength(mm, unit);
  const proofs = pairs.flatMap(({ die, punch }) => [die.proof, punch.proof]);
  const chord = Math.max(0, ...proofs.map((proof) => proof.chord));
  const allowed = Math.max(0, ...proofs.map((proof) => proof.allowed));
  return (
    `Proof by a second method, to ${say(chord)}: cuts ${say(summary.largestGouge)} into a member at most ` +
    `(${say(allowed)} allowed), leaves ${say(summary.largestRemainder)} at most.`
  );
}

function words(left: number, proofsFailed: number): string {
  const parts = [];
  if (left > 0) parts.push(`${left} to settle before release`);
  if (proofsFailed > 0) parts.push(`${proofsFailed} ${proofsFailed === 1 ? 'proof' : 'proofs'} failed`);
  return parts.length > 0 ? parts.join(', ') : 'Not released yet';
}
