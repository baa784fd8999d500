import { jobOfDraft } from '../../core/job-file';
import type { KeptDraft } from '../../electron/contract/host-api';
import type { App } from './app-store';
import { openJob } from './open-file';

/** Opens what an earlier window had not saved, as unsaved work, and then drops its draft: this window keeps its own. */
export async function openDraft(app: App, draft: KeptDraft): Promise<void> {
  const job = jobOfDraft(draft.job, draft.drawing);
  app.store.setState({ leftOver: [] });
  if (!job.ok) {
    app.store.setState({ trouble: job.problem });
    return;
  }
  openJob(app, job.value, { token: draft.token, saved: null }, `Opened the unsaved work on ${draft.name}`);
  await forgetDraft(app, draft);
}

/** Drops a draft for good. */
export async function forgetDraft({ store, host }: App, draft: KeptDraft): Promise<void> {
  store.setState((state) => ({ leftOver: state.leftOver.filter(({ id }) => id !== draft.id) }));
  const reply = await host.dropDraft(draft.id);
  if (!reply.ok) store.setState({ trouble: reply.problem });
}
