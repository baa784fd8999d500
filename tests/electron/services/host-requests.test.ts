import { expect, test } from 'vitest';
import { exportRequest, saveJobRequest } from '../../../electron/services/host-requests';

const save = { token: null, suggestedName: 'bell', text: '{}', replaceChanged: false };
const files = { folderName: 'bell', files: [{ name: 'a.nc', text: '%' }] };

test('the agreed form passes as it is', () => {
  expect(saveJobRequest(save)).toEqual({ ok: true, value: save });
  expect(exportRequest(files)).toEqual({ ok: true, value: files });
});

test.each([
  undefined,
  null,
  'save',
  [],
  { ...save, text: 1 },
  { ...save, path: '/etc/passwd' },
  { text: '' },
])('save refuses %j', (value) =>
  expect(saveJobRequest(value)).toMatchObject({ ok: false, problem: { code: 'request-form' } }),
);

test.each([
  undefined,
  {},
  { ...files, files: [] },
  { ...files, files: [{ name: 'a' }] },
  { ...files, folder: '/' },
])('export refuses %j', (value) =>
  expect(exportRequest(value)).toMatchObject({ ok: false, problem: { code: 'request-form' } }),
);
