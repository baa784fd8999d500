import { jobOnDrawing } from '../../core/job-file';
import type { Job } from '../../core/job';
import { openJobFile } from '../../core/open-job-file';
import { done, failed, type Result } from '../../core/problem';
import type { RevisionQuestion } from '../../core/revision';
import type { Disposition } from '../../core/inspect/carry-dispositions';
import type { HostFile } from '../../electron/contract/host-api';
import { jobOf } from './app-state';
import type { App } from './app-store';
import { takeRevision } from './edits/take-revision';
import type { MadeRevision } from './inspect-state';
import { editJob } from './job-edit';
import { setInspect } from './set-inspect';

/** Compares the open job with an earlier job, or with what it would be on a new drawing. */
export async function compareRevision(app: App, file: HostFile): Promise<void> {
  const job = jobOf(app.store.getState());
  if (!job) return;
  const other = otherJob(job, file);
  if (!other.ok) {
    app.store.setState({ trouble: other.problem });
    return;
  }
  setInspect(app, { busy: true, section: 'revision' });
  const revision = await app.core.revision(other.value);
  setInspect(app, { busy: false });
  // Edited or replaced meanwhile: the answer is about a job that is not open any more.
  if (jobOf(app.store.getState()) !== job) return;
  if (!revision.ok) {
    app.store.setState({ trouble: revision.problem });
    return;
  }
  setInspect(app, {
    revision: { revision: revision.value, kind: other.value.kind, of: job, fileName: file.name },
  });
  app.store.setState({ said: `Compared with ${file.name}`, trouble: null });
}

/**
 * Takes the revision over: the new drawing with what stays accepted, or, from an earlier job, what stays accepted. Not
 * where the job was edited since, because that would undo the edits.
 */
export function takeOver(app: App, { revision, kind, of, fileName }: MadeRevision): void {
  const job = jobOf(app.store.getState());
  if (job !== of) return;
  const carried = carriedReasons(revision.dispositions);
  const next: Job =
    kind === 'new drawing'
      ? { ...revision.taken.job, settled: carried }
      : { ...job, settled: { ...carried, ...job.settled } };
  const count = Object.keys(carried).length;
  editJob(app, takeRevision, {
    job: next,
    say:
      kind === 'new drawing'
        ? `Drawing ${fileName}, ${count} dispositions kept`
        : `${count} dispositions of ${fileName}`,
  });
  setInspect(app, { revision: null });
}

export function carriedReasons(dispositions: readonly Disposition[]): Record<string, { reason: string }> {
  return Object.fromEntries(
    dispositions.flatMap(({ fate, after, reason }) =>
      fate === 'carried over' && after ? [[after.key, { reason }]] : [],
    ),
  );
}

function otherJob(job: Job, file: HostFile): Result<RevisionQuestion> {
  if (!/\.json$/i.test(file.name)) {
    const drawn = jobOnDrawing(file.name, file.bytes).drawing;
    const newer = { ...job, drawing: { ...job.drawing, fileName: drawn.fileName, content: drawn.content } };
    return done({ kind: 'new drawing', older: job, newer });
  }
  try {
    const opened = openJobFile(new TextDecoder('utf-8', { fatal: true }).decode(file.bytes));
    return opened.ok ? done({ kind: 'earlier job', older: opened.value.job, newer: job }) : opened;
  } catch {
    return failed(
      'job-not-text',
      'The job file is not text in UTF-8',
      file.name,
      'Choose a job file as it was saved.',
    );
  }
}
