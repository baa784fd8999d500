import { spawnSync } from 'node:child_process';
import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { beforeAll, expect, test } from 'vitest';
import { bundlePrograms } from '../../../build/bundle-programs';
import { createPipeline, readJobFile, writeJobFile } from '../../../core';
import { temporaryFolder } from '../../support/temporary-folder';
import { plate, smallDrawing } from '../support/small-drawings';

const top = fileURLToPath(new URL('../../..', import.meta.url));
const bundle = join(top, 'dist/check/cli-under-test');

beforeAll(() => bundlePrograms(top, bundle, ['cli']));

/** The bundled command as a shell runs it. */
function diewright(folder: string, ...args: string[]) {
  const { status, stdout, stderr } = spawnSync(process.execPath, [join(bundle, 'cli.cjs'), ...args], {
    cwd: folder,
    encoding: 'utf8',
  });
  return { status, stdout, stderr };
}

test('ends with 2 while findings are open, with 0 when all are settled, and marks the programs so', () => {
  const folder = temporaryFolder();
  writeFileSync(join(folder, 'plate.dxf'), smallDrawing(plate));
  const draft = diewright(folder, 'plate.dxf', '--out', 'draft', '--thickness', '2mm');
  expect(draft).toMatchObject({ status: 2, stderr: '' });
  expect(draft.stdout).toContain('DRAFT');
  const names = readdirSync(join(folder, 'draft'));
  const program = names.find((name) => name.endsWith('.nc')) ?? '';
  expect(readFileSync(join(folder, 'draft', program), 'utf8')).toContain('DRAFT');

  // Every finding that a person may settle gets a reason; the plate has none of weight stop.
  const jobName = names.find((name) => name.endsWith('.diewright.json')) ?? '';
  const job = readJobFile(readFileSync(join(folder, 'draft', jobName), 'utf8'));
  if (!job.ok) throw new Error(job.problem.what);
  const settled = Object.fromEntries(openKeys(folder, jobName).map((key) => [key, { reason: 'checked' }]));
  writeFileSync(join(folder, 'settled.diewright.json'), writeJobFile({ ...job.value, settled }));
  const released = diewright(folder, 'settled.diewright.json', '--out', 'released');
  expect(released).toMatchObject({ status: 0, stderr: '' });
  for (const name of readdirSync(join(folder, 'released')).filter((file) => file.endsWith('.nc'))) {
    expect(readFileSync(join(folder, 'released', name), 'utf8')).not.toContain('DRAFT');
  }
});

test('relieves a die by options: U and V in its program, both planes in the DXF, the surface in the summary', () => {
  const folder = temporaryFolder();
  writeFileSync(join(folder, 'plate.dxf'), smallDrawing(plate));
  const read = (ending: string) => {
    const name = readdirSync(join(folder, 'out')).find((one) => one.endsWith(ending)) ?? '';
    return readFileSync(join(folder, 'out', name), 'utf8');
  };
  const relieved = diewright(folder, 'plate.dxf', '--out', 'out', '--land', '5mm', '--relief', '1,5°');
  expect(relieved).toMatchObject({ status: 2, stderr: '' });
  // Exact geometry: (25 − 5) tan 1.5° = 0.52372.
  expect(read('die.DRAFT.nc')).toMatch(/ U-?0\.52372 V/);
  expect(read('paths.DRAFT.dxf')).toContain('-exit\n');
  expect(read('summary.txt')).toMatch(/Surface +beside the wanted wall by at most .* 0\.002 mm .*allowed/);

  expect(diewright(folder, 'plate.dxf', '--out', 'out', '--taper', '46').stderr).toContain('--taper');
});

test('ends with 1 and one line on the error side for a wrong input, and makes no folder', () => {
  const folder = temporaryFolder();
  writeFileSync(join(folder, 'letter.dxf'), 'Dear toolmaker\n');
  const { status, stdout, stderr } = diewright(folder, 'letter.dxf', '--out', 'out');
  expect(status).toBe(1);
  expect(stdout).toBe('');
  expect(stderr.trimEnd().split('\n')).toHaveLength(1);
  expect(stderr).toContain('DXF');
  expect(existsSync(join(folder, 'out'))).toBe(false);
});

test.each([
  ['rain-gauge-contact-spring.dxf', ['--material', 'brass', '--thickness', '0.2mm']],
  ['letterbox-hinge-leaf.dxf', ['--thickness', '1.5mm']],
  ['bicycle-bell-striker-plate.dxf', ['--thickness', '0.8mm']],
  ['heat-sink-spacer-inch.dxf', ['--material', 'aluminium-1100-5052', '--thickness', '0.040in']],
  ['as-sent/picnic-lamp-bracket.dxf', ['--unit', 'mm', '--gap-tolerance', '0.05mm']],
  ['as-sent/spice-tin-spring.svg', ['--thickness', '0.5mm']],
  ['as-sent/music-box-cam.csv', []],
])('does the whole job on the sample %s', (sample, options) => {
  const folder = temporaryFolder();
  const { status, stderr } = diewright(folder, join(top, 'samples', sample), '--out', 'out', ...options);
  expect(stderr).toBe('');
  expect([0, 2]).toContain(status);
  const endings = readdirSync(join(folder, 'out')).map((name) => name.replace(/^.*?\./, '.'));
  for (const ending of ['.csv', '.txt', '.diewright.json']) expect(endings).toContain(ending);
  expect(endings.some((ending) => ending.endsWith('.nc'))).toBe(true);
  expect(endings.some((ending) => ending.endsWith('.dxf'))).toBe(true);
});

function openKeys(folder: string, jobName: string): string[] {
  const job = readJobFile(readFileSync(join(folder, 'draft', jobName), 'utf8'));
  const plan = job.ok ? createPipeline().plan(job.value) : job;
  if (!plan.ok) throw new Error(plan.problem.what);
  return plan.value.findings.filter(({ weight }) => weight === 'decide').map(({ key }) => key);
}

test('verify tells the programs of a job from changed ones, and writes nothing', () => {
  const folder = temporaryFolder();
  writeFileSync(join(folder, 'plate.dxf'), smallDrawing(plate));
  diewright(folder, 'plate.dxf', '--out', 'draft', '--thickness', '2mm');
  const jobName = readdirSync(join(folder, 'draft')).find((name) => name.endsWith('.diewright.json')) ?? '';
  const job = readJobFile(readFileSync(join(folder, 'draft', jobName), 'utf8'));
  if (!job.ok) throw new Error(job.problem.what);
  const settled = Object.fromEntries(openKeys(folder, jobName).map((key) => [key, { reason: 'checked' }]));
  writeFileSync(join(folder, 'settled.diewright.json'), writeJobFile({ ...job.value, settled }));
  expect(diewright(folder, 'settled.diewright.json', '--out', 'made').status).toBe(0);
  const names = readdirSync(join(folder, 'made'));
  const jobFile = join('made', names.find((name) => name.endsWith('.diewright.json')) ?? '');
  const programs = names.filter((name) => name.endsWith('.nc')).map((name) => join('made', name));
  expect(programs.length).toBeGreaterThan(1);

  const good = diewright(folder, 'verify', jobFile, ...programs);
  expect(good).toMatchObject({ status: 0, stderr: '' });
  expect(good.stdout.match(/^belongs /gm)).toHaveLength(programs.length);

  const [first = ''] = programs;
  const text = readFileSync(join(folder, first), 'utf8');
  writeFileSync(join(folder, first), text.replace(/X(-?)\d/, 'X$19'));
  const changed = diewright(folder, 'verify', jobFile, ...programs);
  expect(changed.status).toBe(2);
  expect(changed.stdout).toContain(`DOES NOT BELONG  ${first}`);
  expect(readdirSync(join(folder, 'made'))).toEqual(names);

  expect(diewright(folder, 'verify', jobFile)).toMatchObject({ status: 1 });
  expect(diewright(folder, 'verify', jobFile, 'no-such.nc')).toMatchObject({ status: 1 });
  expect(diewright(folder, 'verify', jobFile, first, '--wire', '0.2')).toMatchObject({ status: 1 });
});

test('the same job gives the same bytes in another time zone, language, folder and hour', () => {
  const folder = temporaryFolder();
  const sample = join(top, 'samples/letterbox-hinge-leaf.dxf');
  const made = (out: string, env: Record<string, string>, now: number) => {
    // The clock as the process sees it: whoever asks for the date gets another one.
    const clock = join(folder, `clock-${now}.cjs`);
    writeFileSync(
      clock,
      `const D = Date; globalThis.Date = class extends D { constructor(...a) { super(...(a.length ? a : [${now}])); } static now() { return ${now}; } };`,
    );
    const { status, stderr } = spawnSync(
      process.execPath,
      ['--require', clock, join(bundle, 'cli.cjs'), sample, '--out', join(folder, out)],
      { cwd: folder, encoding: 'utf8', env: { PATH: process.env['PATH'] ?? '', ...env } },
    );
    expect(stderr).toBe('');
    expect(status).toBe(2);
    return new Map(
      readdirSync(join(folder, out)).map((name) => [name, readFileSync(join(folder, out, name), 'latin1')]),
    );
  };
  const here = made('here', { TZ: 'UTC', LANG: 'C' }, 1e12);
  const there = made('there', { TZ: 'Pacific/Auckland', LANG: 'de_DE.UTF-8', LC_ALL: 'de_DE.UTF-8' }, 1.9e12);
  expect([...here.keys()].some((name) => name.endsWith('.pdf'))).toBe(true);
  expect([...there.keys()]).toEqual([...here.keys()]);
  for (const [name, text] of here) expect(there.get(name), name).toBe(text);
});
