import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { failed } from '../../../core/problem';
import { isChanged, jobOf } from '../../../renderer/state/app-state';
import { saveJob } from '../../../renderer/state/commands/save-job';
import { setWire } from '../../../renderer/state/edits/set-wire';
import { editJob } from '../../../renderer/state/job-edit';
import { keepDraftCurrent } from '../../../renderer/state/keep-draft-current';
import { forgetDraft, openDraft } from '../../../renderer/state/open-draft';
import { openTestApp, testApp } from '../support/test-app';

beforeEach(() => vi.useFakeTimers());
afterEach(() => vi.useRealTimers());

test('a run of changes makes one draft half a second later, with the drawing once', async () => {
  const app = openTestApp();
  keepDraftCurrent(app);
  await vi.advanceTimersByTimeAsync(5000);
  expect(app.host.drafts).toEqual([]);
  editJob(app, setWire, 0.2);
  editJob(app, setWire, 0.15);
  await vi.advanceTimersByTimeAsync(500);
  expect(app.host.drafts).toHaveLength(1);
  expect(app.host.drafts[0]?.drawing).toBe(jobOf(app.store.getState())?.drawing.content);
  expect(JSON.parse(app.host.drafts[0]?.job ?? '')).toMatchObject({
    wire: { diameter: 0.15 },
    drawing: { content: '' },
  });
  editJob(app, setWire, 0.1);
  await vi.advanceTimersByTimeAsync(500);
  expect(app.host.drafts.map(({ drawing }) => drawing === null)).toEqual([false, true]);
});

test('saving drops the draft at once, and so does undoing back to what is saved', async () => {
  const app = openTestApp();
  keepDraftCurrent(app);
  editJob(app, setWire, 0.2);
  await vi.advanceTimersByTimeAsync(500);
  await saveJob(app, null);
  await vi.advanceTimersByTimeAsync(0);
  expect(app.host.drafts.at(-1)).toMatchObject({ job: null, drawing: null });
});

test('a draft that cannot be kept is said once, and the next one carries the drawing again', async () => {
  const app = openTestApp();
  keepDraftCurrent(app);
  app.host.refusal = failed('disk-full', 'The disk is full', '', 'Free some space.');
  editJob(app, setWire, 0.2);
  await vi.advanceTimersByTimeAsync(500);
  expect(app.store.getState().trouble?.code).toBe('disk-full');
  app.host.refusal = null;
  editJob(app, setWire, 0.15);
  await vi.advanceTimersByTimeAsync(500);
  expect(app.host.drafts.at(-1)?.drawing).not.toBeNull();
});

test('work left over opens as unsaved work, at its place, and its draft is dropped', async () => {
  const before = openTestApp();
  keepDraftCurrent(before);
  editJob(before, setWire, 0.15);
  await vi.advanceTimersByTimeAsync(500);
  const { name, job, drawing } = before.host.drafts[0] ?? { name: '', job: null, drawing: null };
  const draft = { id: 'ab', name, keptAt: '', job: job ?? '', drawing: drawing ?? '', token: 'place-7' };

  const app = testApp();
  app.store.setState({ leftOver: [draft] });
  await openDraft(app, draft);
  const state = app.store.getState();
  expect(jobOf(state)).toEqual(jobOf(before.store.getState()));
  expect(isChanged(state)).toBe(true);
  expect(state.file.token).toBe('place-7');
  expect(state.leftOver).toEqual([]);
  expect(app.host.dropped).toEqual(['ab']);
});

test('a draft that cannot be read is said and kept; thrown away it is gone', async () => {
  const app = testApp();
  const draft = { id: 'ab', name: 'bell', keptAt: '', job: '{', drawing: '', token: null };
  app.store.setState({ leftOver: [draft] });
  await openDraft(app, draft);
  expect(app.store.getState().trouble?.code).toBe('job-not-json');
  expect(app.host.dropped).toEqual([]);
  await forgetDraft(app, draft);
  expect(app.host.dropped).toEqual(['ab']);
});
