import { jobOf } from '../state/app-state';
import { useAppState } from '../state/use-app';
import { BlockSentence } from './block-sentence';
import { DieSetSentence } from './die-set-sentence';
import { DrawingSentence } from './drawing-sentence';
import { MainSentence } from './main-sentence';
import { ProgramSentence } from './program-sentence';
import { ThreadSentence } from './thread-sentence';
import { TimeSentence } from './time-sentence';

/** The whole job in words, every value editable in place. */
export function JobLine() {
  const job = useAppState(jobOf);
  if (!job) return null;
  return (
    <section className="job-line" aria-label="Job line">
      <div className="job-main">
        <MainSentence job={job} />
      </div>
      <div className="job-more">
        <BlockSentence job={job} /> <ThreadSentence job={job} /> <ProgramSentence job={job} />{' '}
        <DieSetSentence job={job} /> <DrawingSentence job={job} /> <TimeSentence />
      </div>
    </section>
  );
}
