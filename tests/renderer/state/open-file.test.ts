import { expect, test } from 'vitest';
import { jobVersion, newJob } from '../../../core/job';
import { writeJobFile } from '../../../core/job-file';
import { isChanged, jobOf } from '../../../renderer/state/app-state';
import { openFile } from '../../../renderer/state/open-file';
import { testApp } from '../support/test-app';

const whole = writeJobFile(newJob('clip.dxf', '0\nEOF\n'));
const file = (text: string) => ({
  name: 'clip.diewright.json',
  bytes: new TextEncoder().encode(text),
  token: 'place-1',
});

test('a whole job file is saved work at its place', () => {
  const app = testApp();
  openFile(app, file(whole));
  expect(app.store.getState()).toMatchObject({ distrust: null, file: { token: 'place-1' } });
  expect(isChanged(app.store.getState())).toBe(false);
});

test('a damaged job file opens as unsaved work, with what was replaced', () => {
  const app = testApp();
  openFile(app, file(whole.replace('"thickness": 1', '"thickness": "thick"')));
  const state = app.store.getState();
  expect(jobOf(state)?.stock.thickness).toBe(1);
  expect(state.distrust?.dropped).toEqual(['stock.thickness must be a number; 1 is used instead']);
  expect(state.file.token).toBe('place-1');
  expect(isChanged(state)).toBe(true);
});

test('a newer job file has no place that a save could write over', () => {
  const app = testApp();
  openFile(app, file(whole.replace(`"version": ${jobVersion}`, `"version": ${jobVersion + 1}`)));
  const state = app.store.getState();
  expect(state.distrust).toMatchObject({ isNewer: true });
  expect(state.file.token).toBeNull();
});
