import { OctagonAlert, X } from 'lucide-react';
import type { Problem } from '../../core/problem';
import { CommandButton } from '../controls/command-button';
import { goOnCommand } from '../state/commands/go-on';
import { stoppedCode } from '../state/commands/stop-calculation';
import { useApp, useAppState } from '../state/use-app';

/** What keeps the job from being worked out, and what went wrong in the last action: what, where, what to do. */
export function ProblemBanner() {
  const { store } = useApp();
  const problem = useAppState((state) => state.problem);
  const trouble = useAppState((state) => state.trouble);
  return (
    <div className="problems">
      {problem && <Banner problem={problem} />}
      {trouble && <Banner problem={trouble} onClose={() => store.setState({ trouble: null })} />}
    </div>
  );
}

function Banner({ problem, onClose }: { problem: Problem; onClose?: () => void }) {
  return (
    <div className="problem" role="alert" data-problem={problem.code}>
      <OctagonAlert aria-hidden="true" />
      <p>
        <strong>{problem.what.replace(/\.$/, '')}.</strong>{' '}
        {problem.where && <span className="problem-where">{problem.where}. </span>}
        {problem.whatToDo}
      </p>
      {problem.code === stoppedCode && <CommandButton command={goOnCommand} text="Go on" small />}
      {onClose && (
        <button type="button" className="icon-button" aria-label="Close" onClick={onClose}>
          <X aria-hidden="true" />
        </button>
      )}
    </div>
  );
}
