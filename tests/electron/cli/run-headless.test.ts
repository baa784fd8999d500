import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { newJob } from '../../../core/job';
import { done, failed } from '../../../core/problem';
import { runHeadless, type HeadlessCore } from '../../../electron/cli/run-headless';
import { temporaryFolder } from '../../support/temporary-folder';
import { emptyPlan, fakeCore } from '../support/fake-core';

async function run(argv: readonly string[], core: HeadlessCore = fakeCore()) {
  const out: string[] = [];
  const error: string[] = [];
  const code = await runHeadless(argv, core, {
    out: (text) => out.push(text),
    error: (text) => error.push(text),
  });
  return { code, out: out.join('\n'), error };
}

function folderWithDrawing() {
  const folder = temporaryFolder();
  writeFileSync(join(folder, 'bell.dxf'), '0\nEOF\n');
  return { folder, drawing: join(folder, 'bell.dxf'), out: join(folder, 'made') };
}

test('a released job ends with 0, a draft with 2; both write their files', async () => {
  const { drawing, out } = folderWithDrawing();
  const released = await run([drawing, '--out', out]);
  expect(released).toMatchObject({ code: 0, error: [] });
  expect(released.out).toContain('RELEASED');
  expect(released.out).toContain('bell.dxf');
  expect(readdirSync(out).sort()).toEqual(['bell.dxf', 'bell.diewright.json'].sort());

  const draft = await run([drawing, '--out', out], fakeCore({ plan: () => done(emptyPlan(false)) }));
  expect(draft).toMatchObject({ code: 2, error: [] });
  expect(draft.out).toContain('DRAFT');
});

test('reads a job file and applies the options to it', async () => {
  const { folder, out } = folderWithDrawing();
  const job = { ...newJob('bell.dxf', ''), name: 'striker' };
  writeFileSync(join(folder, 'striker.diewright.json'), JSON.stringify(job));
  await run([join(folder, 'striker.diewright.json'), '--out', out, '--thickness', '2']);
  const written = JSON.parse(readFileSync(join(out, 'striker.diewright.json'), 'utf8'));
  expect(written.stock.thickness).toBe(2);
});

test('help goes to the output side and ends with 0', async () => {
  const help = await run(['--help']);
  expect(help).toMatchObject({ code: 0, error: [] });
  for (const word of ['--out', '--clearance', 'brass', '70']) expect(help.out).toContain(word);
});

test('an input error is one line that says what, where and what to do, and touches no file', async () => {
  const { drawing, out } = folderWithDrawing();
  await run([drawing, '--out', out]);
  const before = readFileSync(join(out, 'bell.dxf'), 'utf8');
  const broken = () =>
    failed('drawing-empty', 'The drawing holds no closed contour', 'bell.dxf', 'Close it.');
  for (const core of [fakeCore({ plan: broken }), fakeCore({ files: broken })]) {
    const result = await run([drawing, '--out', out], core);
    expect(result.code).toBe(1);
    expect(result.error).toEqual(['The drawing holds no closed contour (bell.dxf). Close it.']);
    expect(result.out).toBe('');
  }
  expect(readFileSync(join(out, 'bell.dxf'), 'utf8')).toBe(before);
});

test('a drawing without a unit is asked about with the sizes it would have', async () => {
  const { drawing, out } = folderWithDrawing();
  const core = fakeCore({ plan: () => failed('units-needed', 'The drawing states no unit', '', 'Choose.') });
  const { code, error } = await run([drawing, '--out', out], core);
  expect(code).toBe(1);
  expect(error[0]).toContain('--unit mm (1.5 × 0.75 mm, 0.05906 × 0.02953 in)');
  expect(error[0]).toContain('--unit inch (38.1 × 19.05 mm, 1.5 × 0.75 in)');
  expect(existsSync(out)).toBe(false);
});

test.each([
  [[], 'No drawing or job is given'],
  [['a.dxf'], 'No folder for the files is given'],
  [['a.dxf', 'b.dxf', '--out', 'x'], 'More than one file is given'],
  [['a.dxf', '--out', 'x', '--nonsense'], "Unknown option '--nonsense'"],
  [['a.dxf', '--out'], "Option '--out <value>' argument missing"],
  [['none.dxf', '--out', 'x'], 'There is no such file'],
  [['.', '--out', 'x'], 'A folder cannot be read as a file'],
])('%j ends with 1 and one line', async (argv, says) => {
  const { code, error, out } = await run(argv);
  expect(code).toBe(1);
  expect(error).toHaveLength(1);
  expect(error[0]).toContain(says);
  expect(error[0]).not.toContain('\n');
  expect(out).toBe('');
});

test('a job that is not text, and one that is not a job, are named with their path', async () => {
  const { folder, out } = folderWithDrawing();
  const path = join(folder, 'bad.diewright.json');
  writeFileSync(path, Buffer.from([0x7b, 0xff, 0xfe]));
  expect((await run([path, '--out', out])).error[0]).toContain(path);
  writeFileSync(path, 'NaN');
  const { code, error } = await run([path, '--out', out]);
  expect(code).toBe(1);
  expect(error[0]).toBe(`The job is not JSON (${path}, line 1). Give another file.`);
});

test('a folder that cannot be made is an input error', async () => {
  const { folder, drawing } = folderWithDrawing();
  mkdirSync(join(folder, 'made'));
  writeFileSync(join(folder, 'made/file'), 'mine');
  const { code, error } = await run([drawing, '--out', join(folder, 'made/file')]);
  expect(code).toBe(1);
  expect(error).toHaveLength(1);
  expect(readFileSync(join(folder, 'made/file'), 'utf8')).toBe('mine');
});

test('a mistake of our own is thrown, for the entry to end with 70', async () => {
  const { drawing, out } = folderWithDrawing();
  const core = fakeCore({
    plan: () => {
      throw new Error('Broken assumption');
    },
  });
  await expect(run([drawing, '--out', out], core)).rejects.toThrow('Broken assumption');
  expect(existsSync(out)).toBe(false);
});
