import { jobOf } from '../state/app-state';
import { useAppState } from '../state/use-app';
import { DrawingSentence } from './drawing-sentence';
import { MainSentence } from './main-sentence';
import { ThreadSentence } from './thread-sentence';

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
        <ThreadSentence job={job} /> <DrawingSentence job={job} />
      </div>
    </section>
  );
}
