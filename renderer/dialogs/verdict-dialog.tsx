import { CircleCheck, OctagonAlert } from 'lucide-react';
import type { ProgramVerdict } from '../../core/output/verify-program';
import { DialogFrame } from '../controls/dialog-frame';
import { useApp } from '../state/use-app';

/** Whether a program on disk belongs to the open job, and why not. */
export function VerdictDialog({ name, verdict }: { name: string; verdict: ProgramVerdict }) {
  const app = useApp();
  const close = () => app.store.setState({ verified: null });
  const { belongs, blockId, say } = verdict;
  const Icon = belongs ? CircleCheck : OctagonAlert;
  return (
    <DialogFrame
      title={belongs ? 'The program belongs to the job' : 'Do not run this program'}
      onClose={close}
    >
      <p className={belongs ? 'verdict' : 'verdict verdict-no'}>
        <Icon aria-hidden size={18} />
        <strong>{name}</strong>
        {blockId && <span> is the program of {blockId}</span>}
      </p>
      <p>{say}</p>
      <div className="dialog-buttons">
        <button type="button" className="button button-strong" onClick={close}>
          Close
        </button>
      </div>
    </DialogFrame>
  );
}
