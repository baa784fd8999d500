import { jobOnDrawing } from '../../core/job-file';
import { jobFileEnding, type Job } from '../../core/job';
import { openJobFile, type OpenedJob } from '../../core/open-job-file';
import { done, failed, type Result } from '../../core/problem';
import type { HostFile } from '../../electron/contract/host-api';
import { newReplay } from '../replay/replay';
import { isChanged, type AppState } from './app-state';
import type { App } from './app-store';
import { newHistory } from './history';
import { emptyInspect } from './inspect-state';
import { ownFileKind, takeOwnFile } from './own-files';
import { isProgram, verifyFile } from './verify-file';

/** Opens a drawing or a job file, after asking where that would lose changes; takes a table or style into the job, holds a program against it. */
export function openFile(app: App, file: HostFile): void {
  if (isProgram(file)) {
    void verifyFile(app, file);
    return;
  }
  const kind = ownFileKind(file.name);
  if (kind) {
    // It changes the open job and replaces nothing: undo takes it back.
    app.store.setState({ trouble: takeOwnFile(app, file, kind) });
    return;
  }
  if (isChanged(app.store.getState())) app.store.setState({ waiting: file });
  else openNow(app, file);
}

/** Opens it, whatever is open. A file that can't be read leaves everything as it was. */
export function openNow(app: App, file: HostFile): void {
  const opened = jobOfFile(file);
  if (!opened.ok) {
    app.store.setState({ waiting: null, trouble: opened.problem });
    return;
  }
  const { job, dropped, isNewer } = opened.value;
  // A newer file is never written over by this program, which does not know all that is in it.
  const token = isJobName(file.name) && !isNewer ? file.token : null;
  // A new job on a drawing counts as saved until something in it is changed: the drawing is still on disk.
  openJob(app, job, { token, saved: dropped.length > 0 ? null : job }, `Opened ${file.name}`);
  if (dropped.length > 0 || isNewer) app.store.setState({ distrust: opened.value });
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
    survey: null,
    surveyed: null,
    unitAsked: false,
    pane: 'review',
    replay: newReplay,
    sectionAt: null,
    progress: null,
    waiting: null,
    selected: null,
    hovered: null,
    pointedCorner: null,
    openCorner: null,
    inspect: emptyInspect,
    fitPending: true,
    unit: job.output.unit,
    said,
  });
}

const isJobName = (name: string): boolean => /\.json$/i.test(name);

function jobOfFile(file: HostFile): Result<OpenedJob> {
  if (!isJobName(file.name)) {
    return done({ job: jobOnDrawing(file.name, file.bytes), dropped: [], isNewer: false });
  }
  try {
    return openJobFile(new TextDecoder('utf-8', { fatal: true }).decode(file.bytes));
  } catch {
    return failed(
      'job-not-text',
      'The job file is not text in UTF-8',
      file.name,
      `Open a ${jobFileEnding} file as it was saved.`,
    );
  }
}
