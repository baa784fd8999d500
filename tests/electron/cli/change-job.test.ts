import { expect, test } from 'vitest';
import { newJob } from '../../../core/job';
import type { Job } from '../../../core/job';
import { changeJob } from '../../../electron/cli/change-job';

const job = newJob('bell.dxf', '');
const changed = (changes: Parameters<typeof changeJob>[1]) => {
  const result = changeJob(job, changes);
  return result.ok ? result.value : result.problem;
};

test('no option leaves the job as it is', () => expect(changed({})).toEqual(job));

// 1 inch is 25.4 mm exactly (international yard and pound agreement of 1959).
test('lengths come in any unit and stay mm inside', () => {
  const result = changeJob(job, { thickness: '1/16in', wire: '0.010 in', 'gap-tolerance': '0,01' });
  if (!result.ok) throw new Error(result.problem.what);
  expect(result.value.stock.thickness).toBeCloseTo(1.5875, 12);
  expect(result.value.wire.diameter).toBeCloseTo(0.254, 12);
  expect(result.value.drawing.gapTolerance).toBeCloseTo(0.01, 12);
});

test('the clearance is a length, a share or the table', () => {
  expect(changed({ clearance: '6%' })).toMatchObject({ clearance: { rule: 'percent', percent: 6 } });
  expect(changed({ clearance: '7,5 % t' })).toMatchObject({ clearance: { rule: 'percent', percent: 7.5 } });
  expect(changed({ clearance: '0.06mm' })).toMatchObject({ clearance: { rule: 'typed', perSide: 0.06 } });
  expect(changed({ clearance: 'table' })).toMatchObject({ clearance: { rule: 'table' } });
});

test('names for units, material, program and files', () => {
  expect(
    changed({ unit: 'in', material: 'brass', program: 'compensated', 'output-unit': 'inch', name: 'Bell' }),
  ).toMatchObject({
    name: 'Bell',
    drawing: { unit: 'inch' },
    stock: { material: 'brass' },
    output: { program: 'compensated', unit: 'inch' },
  });
});

test('the die has a relief below a land, a taper, or neither', () => {
  expect(changed({ relief: '0,5°', land: '1/8in' })).toMatchObject({
    relief: { kind: 'land and relief', angleDeg: 0.5, land: 3.175 },
  });
  expect(changed({ taper: '1.5' })).toMatchObject({ relief: { kind: 'one tapered cut', angleDeg: 1.5 } });
  expect(changed({ relief: 'none' })).toMatchObject({ relief: { kind: 'none' } });
});

test.each([
  ['relief', '0'],
  ['relief', '46'],
  ['taper', 'steep'],
  ['land', '0'],
  ['thickness', '0'],
  ['thickness', '-1'],
  ['thickness', 'NaN'],
  ['thickness', 'thin'],
  ['thickness', '1 furlong'],
  ['wire', '0'],
  ['clearance', '-5%'],
  ['clearance', '0'],
  ['clearance', '0%'],
  ['clearance', '1.2.3%'],
  ['unit', 'cubit'],
  ['unit', 'toString'],
  ['material', 'cheese'],
  ['program', 'nice'],
  ['output-unit', 'mile'],
  ['gap-tolerance', '0'],
] as const)('--%s %s is refused, naming the option', (option, text) => {
  expect(changeJob(job, { [option]: text })).toMatchObject({ ok: false, problem: { where: `--${option}` } });
});

test.each([
  [{ relief: '0.5', taper: '0.5' }, '--taper'],
  [{ land: '3mm' }, '--land'],
  [{ land: '3mm', relief: 'none' }, '--land'],
  [{ land: '3mm', taper: '1' }, '--land'],
])('a relief that would be passed over is refused: %o', (changes, where) => {
  expect(changeJob(job, changes)).toMatchObject({ ok: false, problem: { where } });
});

test('a land alone changes a job that has a relief already; a taper takes its place', () => {
  const relieved: Job = { ...job, relief: { ...job.relief, kind: 'land and relief' } };
  expect(changeJob(relieved, { land: '2mm' })).toMatchObject({ value: { relief: { land: 2 } } });
  expect(changeJob(relieved, { taper: '1' })).toMatchObject({
    value: { relief: { kind: 'one tapered cut' } },
  });
});

test('heights and the technology table choose the passes of each member', () => {
  const rows = [
    {
      wire: 0.25,
      height: 30,
      passes: [{ sparkGap: 0.03, stockLeft: 0, rate: 1, roughness: 3, wireSpeed: 8 }],
    },
    {
      wire: 0.25,
      height: 80,
      passes: [{ sparkGap: 0.04, stockLeft: 0, rate: 2, roughness: 3, wireSpeed: 8 }],
    },
  ];
  const technology = { ...job.technology, name: 'Test', rows };
  const typed = { ...job, passRule: 'typed' as const };
  const result = changeJob(
    typed,
    { 'die-height': '1 in', 'punch-height': '60' },
    { technology, style: undefined },
  );
  if (!result.ok) throw new Error(result.problem.what);
  expect(result.value.blocks.die).toBeCloseTo(25.4, 12);
  expect(result.value.passes.map(({ rate }) => rate)).toEqual([1]);
  expect(result.value.punchPasses?.map(({ rate }) => rate)).toEqual([2]);
});

test('the die set on the command line', () => {
  const result = changeJob(job, {
    tool: 'two-stations',
    strip: '2',
    stripper: 'H7/f7',
    retainer: '-0.005mm',
  });
  if (!result.ok) throw new Error(result.problem.what);
  const { dieSet } = result.value;
  expect(dieSet.arrangement).toBe('two stations');
  expect(dieSet.strip.up).toBe('two up');
  expect(dieSet.stripper).toMatchObject({
    make: true,
    fit: { rule: 'iso', hole: 'H7', shaft: 'f7', nominal: null },
  });
  expect(dieSet.retainer).toMatchObject({ make: true, fit: { rule: 'allowance', perSide: -0.005 } });
  for (const [option, text] of [
    ['tool', 'progressive'],
    ['strip', '3'],
    ['stripper', 'H7/Q3'],
    ['retainer', 'tight'],
  ] as const) {
    expect(changeJob(job, { [option]: text })).toMatchObject({
      ok: false,
      problem: { where: `--${option}` },
    });
  }
});

test('own materials from a file are taken by their name', () => {
  const material = {
    id: 'own-1',
    name: 'mill strip 4711',
    family: null,
    clearance: 0.07,
    shearStrength: 300,
    tensileStrength: null,
    source: 'certificate',
  };
  const files = { technology: undefined, style: undefined, materials: [material] };
  const result = changeJob(job, { material: 'mill strip 4711' }, files);
  if (!result.ok) throw new Error(result.problem.what);
  expect(result.value.ownMaterials).toEqual([material]);
  expect(result.value.stock.material).toBe('own-1');
  expect(changeJob(job, { material: 'mill strip 4711' })).toMatchObject({
    ok: false,
    problem: { where: '--material' },
  });
});
