import { jobOnDrawing, readJobFile } from '../../core/job-file';
import { jobFileEnding, type Job } from '../../core/job';
import { done, failed, type Result } from '../../core/problem';
import type { HostFile } from '../../electron/contract/host-api';
import { isChanged, type AppState } from './app-state';
import type { App } from './app-store';
import { newHistory } from './history';

/** Opens a drawing or a job file, after asking where that would lose changes. */
export function openFile(app: App, file: HostFile): void {
  if (isChanged(app.store.getState())) app.store.setState({ waiting: file });
  else openNow(app, file);
}

/** Opens it, whatever is open. A file that can't be read leaves everything as it was. */
export function openNow(app: App, file: HostFile): void {
  const job = jobOfFile(file);
  if (!job.ok) {
    app.store.setState({ waiting: null, trouble: job.problem });
    return;
  }
  // A new job on a drawing counts as saved until something in it is changed: the drawing is still on disk.
  const token = isJobName(file.name) ? file.token : null;
  openJob(app, job.value, { token, saved: job.value }, `Opened ${file.name}`);
}

/** Takes a job in as the window's only one, with a history of its own. */
export function openJob(app: App, job: Job, file: AppState['file'], said: string): void {
  app.core.forget();
  app.store.setState({
    history: newHistory(job),
    file,
    made: null,
    problem: null,
    trouble: null,
    unitQuestion: null,
    waiting: null,
    selected: null,
    hovered: null,
    fitPending: true,
    unit: job.output.unit,
    said,
  });
}

const isJobName = (name: string): boolean => /\.json$/i.test(name);

function jobOfFile(file: HostFile): Result<Job> {
  if (!isJobName(file.name)) return done(jobOnDrawing(file.name, file.bytes));
  try {
    return readJobFile(new TextDecoder('utf-8', { fatal: true }).decode(file.bytes));
  } catch {
    return failed(
      'job-not-text',
      'The job file is not text in UTF-8',
      file.name,
      `Open a ${jobFileEnding} file as it was saved.`,
    );
  }
}
