import { describe, expect, it } from 'vitest';
import { exampleStyle } from '../../../core/example-style';
import { passesOf } from '../../../core/job';
import { shippedTechnology } from '../../../core/shipped-technology';
import { writeTechnologyFile } from '../../../core/technology-file';
import { writeStyleFile } from '../../../core/write-style-file';
import { jobOf } from '../../../renderer/state/app-state';
import { undoCommand } from '../../../renderer/state/commands/undo';
import { openFile } from '../../../renderer/state/open-file';
import { openOwnFile, saveStyle, saveTechnology } from '../../../renderer/state/own-files';
import { openTestApp, testApp } from '../support/test-app';

const file = (name: string, text: string) => ({ name, bytes: new TextEncoder().encode(text), token: null });
const row = {
  wire: 0.25,
  height: 60,
  passes: [{ sparkGap: 0.03, stockLeft: 0, rate: 7, roughness: 2, wireSpeed: 8 }],
};
const table = { ...shippedTechnology, name: 'ours', rows: [row] };

describe('a technology table or a program style that is opened', () => {
  it('changes the open job in one step, which undo takes back', () => {
    const app = openTestApp();
    openFile(app, file('ours.diewright-technology.json', writeTechnologyFile(table)));
    const job = jobOf(app.store.getState());
    expect(job && passesOf(job, 'die').map(({ rate }) => rate)).toEqual([7]);
    expect(app.store.getState().said).toBe('Technology table ours');
    void undoCommand.run(app);
    expect(jobOf(app.store.getState())?.technology.name).toBe(shippedTechnology.name);
  });

  it('is known by what it says, whatever it is called', async () => {
    const app = openTestApp();
    app.host.nextFile = {
      ok: true,
      value: file('style.json', writeStyleFile({ ...exampleStyle, name: 'ours' })),
    };
    await openOwnFile(app, 'technology');
    expect(jobOf(app.store.getState())?.output.style.name).toBe('ours');
    expect(app.store.getState().trouble).toBeNull();
  });

  it('says what is wrong and leaves the job alone', () => {
    const app = openTestApp();
    const before = jobOf(app.store.getState());
    openFile(
      app,
      file('bad.diewright-style.json', writeStyleFile(exampleStyle).replace('"spaces": true', '"spaces": 3')),
    );
    expect(app.store.getState().trouble).toMatchObject({ code: 'style-field' });
    expect(app.store.getState().trouble?.where).toMatch(/^bad\.diewright-style\.json, line \d+$/);
    openFile(app, { ...file('bad.diewright-style.json', ''), bytes: new Uint8Array([0xff]) });
    expect(app.store.getState().trouble).toMatchObject({ code: 'file-not-text' });
    const misnamed = writeStyleFile({ ...exampleStyle, name: 'neutral' });
    openFile(app, file('bad.diewright-style.json', misnamed));
    expect(app.store.getState().trouble).toMatchObject({ code: 'style-name-taken' });
    expect(jobOf(app.store.getState())).toBe(before);
  });

  it('needs a job', () => {
    const app = testApp();
    openFile(app, file('ours.diewright-technology.json', writeTechnologyFile(table)));
    expect(app.store.getState()).toMatchObject({ history: null, trouble: { code: 'no-job' } });
  });
});

describe('saving', () => {
  it('gives the host the whole file under the name of what is in it', async () => {
    const app = openTestApp();
    await saveTechnology(app);
    await saveStyle(app);
    expect(app.host.savedOwn).toMatchObject([
      { kind: 'technology', suggestedName: 'Starting values.diewright-technology.json' },
      { kind: 'style', suggestedName: 'neutral.diewright-style.json' },
    ]);
    expect(app.host.savedOwn[0]?.text).toBe(writeTechnologyFile(shippedTechnology));
    app.host.refusal = {
      ok: false,
      problem: { code: 'disk-full', what: 'Full', where: '', whatToDo: 'Clear it.' },
    };
    await saveStyle(app);
    expect(app.store.getState().trouble).toMatchObject({ code: 'disk-full' });
  });
});
