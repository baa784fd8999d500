import type { Job } from '../../core/job';
import { writeJobFile } from '../../core/job-file';
import { isChanged, jobOf } from './app-state';
import type { App } from './app-store';

/** Time from a change to its draft, ms: a run of changes makes a few drafts, and a crash takes less than 2 s of work. */
const patience = 500;

/**
 * Has the host keep a draft of unsaved work, a moment after each change, and drop it when all is saved. Drafts that
 * cannot be kept are said once; the work goes on. Returns the way to stop.
 */
export function keepDraftCurrent(app: App): () => void {
  const { store, host } = app;
  let kept: Job | null = null;
  let keptDrawing: string | null = null;
  let hasComplained = false;
  let timer: ReturnType<typeof setTimeout> | null = null;
  let isBusy = false;

  const keep = async (): Promise<void> => {
    timer = null;
    const state = store.getState();
    const job = isChanged(state) ? jobOf(state) : null;
    if (job === kept) return;
    isBusy = true;
    const drawing = job && job.drawing.content !== keptDrawing ? job.drawing.content : null;
    const reply = await host.keepDraft({
      name: job?.name ?? '',
      job: job && writeJobFile({ ...job, drawing: { ...job.drawing, content: '' } }),
      drawing,
      token: state.file.token,
    });
    isBusy = false;
    kept = job;
    if (reply.ok) keptDrawing = job && (drawing ?? keptDrawing);
    else {
      keptDrawing = null;
      if (!hasComplained) store.setState({ trouble: reply.problem });
      hasComplained = true;
    }
    look();
  };

  const look = (): void => {
    const state = store.getState();
    const job = isChanged(state) ? jobOf(state) : null;
    if (timer !== null && job === null) clearTimeout(timer);
    if ((timer === null || job === null) && !isBusy && job !== kept) {
      // What is saved needs no draft any more, from that moment on.
      timer = setTimeout(() => void keep(), job === null ? 0 : patience);
    }
  };
  const stop = store.subscribe(look);
  look();
  return () => {
    stop();
    if (timer !== null) clearTimeout(timer);
  };
}
