import type { Job } from '../../core/job';
import { jobOf } from './app-state';
import type { App } from './app-store';
import { record, sealed } from './history';

/** One kind of change to the job: a row of the history, whatever control it came from. */
export interface JobEdit<A> {
  readonly id: string;
  /** What the history calls it, e.g. "Set the wire to 0.15 mm". */
  label(argument: A, job: Job): string;
  /** 'merge': a run of changes to the same thing is one step. */
  readonly undo: 'step' | 'merge';
  /** What "the same thing" is, where the edit has several, e.g. the pass's number. */
  part?(argument: A): string;
  /** The job after it, or the very same job where it changes nothing. */
  apply(job: Job, argument: A): Job;
}

/**
 * Makes a change to the open job and writes it into the history; nothing happens where no job is open. `turning`
 * says that it is one of a run (arrow keys on a value), which an edit of kind 'merge' makes one step of.
 */
export function editJob<A>(app: App, edit: JobEdit<A>, argument: A, turning = false): void {
  const state = app.store.getState();
  const job = jobOf(state);
  if (!state.history || !job) return;
  const mergeKey = turning && edit.undo === 'merge' ? `${edit.id}/${edit.part?.(argument) ?? ''}` : null;
  const next = edit.apply(job, argument);
  const label = edit.label(argument, job);
  const history = record(state.history, sameContent(job, next) ? job : next, label, mergeKey);
  if (history !== state.history) app.store.setState({ history, trouble: null, said: label });
}

/** Ends a run of changes: the next one is a step of its own. */
export function endTurning(app: App): void {
  const { history } = app.store.getState();
  if (history && sealed(history) !== history) app.store.setState({ history: sealed(history) });
}

/** Whether two jobs say the same; the drawing's text is compared by identity, since no edit copies it. */
function sameContent(a: Job, b: Job): boolean {
  if (a === b) return true;
  if (a.drawing.content !== b.drawing.content) return false;
  const bare = (job: Job) => JSON.stringify({ ...job, drawing: { ...job.drawing, content: '' } });
  return bare(a) === bare(b);
}
