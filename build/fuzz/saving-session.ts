import { writeSync } from 'node:fs';
import { join } from 'node:path';
import { jobOnDrawing } from '../../core/job-file';
import { createDraftCalls } from '../../electron/services/draft-calls';
import { createDrafts } from '../../electron/services/drafts';
import { createJobPlaces } from '../../electron/services/job-places';
import { done } from '../../core/problem';
import type { HostApi } from '../../electron/contract/host-api';
import { createApp } from '../../renderer/state/app-store';
import { saveJob } from '../../renderer/state/commands/save-job';
import { setWire } from '../../renderer/state/edits/set-wire';
import { editJob } from '../../renderer/state/job-edit';
import { keepDraftCurrent } from '../../renderer/state/keep-draft-current';
import { openJob } from '../../renderer/state/open-file';
import { CoreClient } from '../../renderer/worker/core-client';

/** Edit number n sets the wire to this, mm, so that the wire found later tells how far the session came. */
export const wireOfEdit = (edit: number): number => (edit + 1) / 1000;

/**
 * An editing session with the window's own state and the hosts' own services, in this process: an edit every 20 ms,
 * a save now and then. Says on standard output what it has done, in writes that a kill cannot take back.
 */
export async function runSession(folder: string): Promise<never> {
  const places = createJobPlaces();
  const drafts = createDraftCalls(createDrafts(join(folder, 'drafts')), places);
  const path = join(folder, 'session.diewright.json');
  const host: HostApi = {
    kind: 'desktop',
    openedAtStart: () => Promise.resolve(null),
    chooseFile: () => Promise.resolve(null),
    saveOwnFile: () => Promise.resolve(null),
    exportFiles: () => Promise.resolve(null),
    saveJob: ({ text, replaceChanged }) => places.save(path, text, replaceChanged),
    keepDraft: (request) => drafts.keepDraft('5e5510', request),
    leftOver: () => Promise.resolve(done([])),
    dropDraft: (id) => drafts.dropDraft({ id }),
  };
  const noWorker = (): never => {
    throw new Error('this session plans nothing');
  };
  const app = createApp(host, new CoreClient(noWorker));
  const drawing = new TextEncoder().encode(`0\nSECTION\n${'999\nlarge\n'.repeat(20_000)}0\nEOF\n`);
  openJob(app, jobOnDrawing('session.dxf', drawing), { token: null, saved: null }, '');
  keepDraftCurrent(app);
  for (let edit = 1; ; edit++) {
    editJob(app, setWire, wireOfEdit(edit));
    writeSync(1, `edited ${edit} ${Date.now()}\n`);
    if (edit % 40 === 0) {
      await saveJob(app, app.store.getState().file.token);
      writeSync(1, `saved ${edit}\n`);
    }
    await new Promise((resolve) => setTimeout(resolve, 20));
  }
}
