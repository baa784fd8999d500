import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { createPipeline, jobOnDrawing, readJobFile, writeJobFile } from '../../../core';
import { runHeadless } from '../../../electron/cli/run-headless';
import { temporaryFolder } from '../../support/temporary-folder';
import { line, plate, polyline, smallDrawing } from '../support/small-drawings';
import { done } from '../../../core/problem';

/** The command with the real core, on one file. */
async function run(name: string, content: string | Buffer, options: readonly string[] = []) {
  const folder = temporaryFolder();
  const out = join(folder, 'out');
  writeFileSync(join(folder, name), content);
  const said: string[] = [];
  const errors: string[] = [];
  const pipeline = createPipeline();
  const code = await runHeadless(
    [join(folder, name), '--out', out, ...options],
    { ...pipeline, jobOnDrawing, readJobFile, sheets: () => done([]) },
    { out: (text) => said.push(text), error: (text) => errors.push(text) },
  );
  return { code, out, errors, said: said.join('\n') };
}

const good = smallDrawing(plate);
const openLine = smallDrawing(line(0, 0, 20, 0));
const job = writeJobFile(jobOnDrawing('plate.dxf', Buffer.from(good)));

// What each line has to name besides its code; the words are ours.
test.each<[string, string, string | Buffer, string[], RegExp]>([
  ['no DXF', 'a.dxf', 'Dear toolmaker, please find the drawing attached.\n', [], /DXF/],
  ['an empty file', 'a.dxf', '', [], /empty/i],
  ['a file cut off', 'a.dxf', good.slice(0, good.length * 0.7), [], /cut off|not whole|end/i],
  // The sentinel of binary DXF: DXF reference, "Binary DXF files".
  [
    'a binary DXF',
    'a.dxf',
    Buffer.from('AutoCAD Binary DXF\r\n\u001a\u0000\u0000\u0000SECTION', 'latin1'),
    [],
    /binary/i,
  ],
  ['no closed contour', 'a.dxf', openLine, [], /closed|contour/i],
  ['no unit', 'a.dxf', smallDrawing(plate, 0), [], /--unit mm .*20 × 10 mm/],
  ['zero thickness', 'a.dxf', good, ['--thickness', '0'], /--thickness/],
  ['an option given twice', 'a.dxf', good, ['--wire', '0.2', '--wire', '0.3'], /--wire/],
  ['a relief and a taper', 'a.dxf', good, ['--relief', '0.5', '--taper', '1'], /--taper/],
  ['negative thickness', 'a.dxf', good, ['--thickness=-1'], /--thickness/],
  [
    'NaN in a job file',
    'a.diewright.json',
    job.replace('"thickness": 1', '"thickness": NaN'),
    [],
    /a\.diewright\.json/,
  ],
  [
    'null in a job file',
    'a.diewright.json',
    job.replace('"thickness": 1', '"thickness": null'),
    [],
    /stock\.thickness/,
  ],
  [
    'negative in a job file',
    'a.diewright.json',
    job.replace('"thickness": 1', '"thickness": -1'),
    [],
    /stock\.thickness/,
  ],
  ['half a job file', 'a.diewright.json', job.slice(0, 400), [], /not whole/],
  ['another JSON file', 'a.json', '{"name": "x"}', [], /not a Diewright job/],
])('%s is one line, and no file is written', async (_what, name, content, options, says) => {
  const { code, out, errors, said } = await run(name, content, options);
  expect(errors).toHaveLength(1);
  expect(errors[0]).toMatch(says);
  expect(errors[0]).not.toMatch(/\n|undefined|\[object/);
  expect(code).toBe(1);
  expect(said).toBe('');
  expect(existsSync(out)).toBe(false);
});

test('a contour that crosses itself, and a wire wider than the opening, are said and never released', async () => {
  const crossing = await run('bow.dxf', smallDrawing(polyline([0, 0], [20, 10], [20, 0], [0, 6])));
  expect([1, 2]).toContain(crossing.code);
  expect(`${crossing.said}${crossing.errors.join()}`).toMatch(/cross/i);

  const wide = await run('plate.dxf', good, ['--wire', '30mm']);
  expect([1, 2]).toContain(wide.code);
  expect(`${wide.said}${wide.errors.join()}`).toMatch(/wire/i);
});

test('a failed run leaves the files of an earlier one as they were', async () => {
  const folder = temporaryFolder();
  const out = join(folder, 'out');
  mkdirSync(out);
  writeFileSync(join(folder, 'plate.dxf'), good);
  const speech = { out: () => undefined, error: () => undefined };
  const core = { ...createPipeline(), jobOnDrawing, readJobFile, sheets: () => done([]) };
  const call = (...options: string[]) =>
    runHeadless([join(folder, 'plate.dxf'), '--out', out, ...options], core, speech);

  expect(await call()).not.toBe(1);
  const before = readdirSync(out).map((name) => [name, readFileSync(join(out, name), 'utf8')]);
  expect(before.length).toBeGreaterThan(3);
  expect(await call('--thickness', 'NaN')).toBe(1);
  writeFileSync(join(folder, 'plate.dxf'), good.slice(0, 100));
  expect(await call()).toBe(1);
  expect(readdirSync(out).map((name) => [name, readFileSync(join(out, name), 'utf8')])).toEqual(before);
});

test('what was written can be read back as a job, and gives the same files again', async () => {
  const first = await run('plate.dxf', good, ['--material', 'brass', '--thickness', '0.5']);
  const name = readdirSync(first.out).find((file) => file.endsWith('.diewright.json')) ?? '';
  const again = await run('plate.diewright.json', readFileSync(join(first.out, name)));
  expect(again.code).toBe(first.code);
  for (const file of readdirSync(first.out)) {
    expect(readFileSync(join(again.out, file), 'utf8'), file).toBe(
      readFileSync(join(first.out, file), 'utf8'),
    );
  }
});
