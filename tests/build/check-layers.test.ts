import { mkdirSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { checkLayers } from '../../build/check-layers';
import { temporaryFolder } from '../support/temporary-folder';

const rules = fileURLToPath(new URL('../../build/dependency-rules.cjs', import.meta.url));

/** Small projects of a few files, checked with our rules. */
async function violationsOf(files: Readonly<Record<string, string>>): Promise<readonly string[]> {
  const folder = temporaryFolder();
  for (const [path, text] of Object.entries(files)) {
    mkdirSync(dirname(join(folder, path)), { recursive: true });
    writeFileSync(join(folder, path), text);
  }
  const { looked, violations } = await checkLayers(folder, rules);
  expect(looked).toBe(Object.keys(files).filter((path) => /\.tsx?$/.test(path)).length);
  return violations;
}

const library = (name: string) => ({
  [`node_modules/${name}/package.json`]: JSON.stringify({ name, main: 'index.js' }),
  [`node_modules/${name}/index.js`]: 'exports.a = 1;',
});

const a = 'export const a = 1;\n';
const use = (path: string) => `import { a } from '${path}';\nexport const b = a;\n`;
const useType = (path: string) => `import type { a } from '${path}';\nexport type B = typeof a;\n`;

// Each entry: who imports whom, and the rule that has to say no.
test.each([
  ['core/geometry/x.ts', 'core/die/y.ts', 'core-geometry-looks-left-only'],
  ['core/geometry/x.ts', 'core/problem.ts', 'core-geometry-looks-left-only'],
  ['core/die/x.ts', 'core/drawing/y.ts', 'core-die-looks-left-only'],
  ['core/die/x.ts', 'core/wire/y.ts', 'core-die-looks-left-only'],
  ['core/wire/x.ts', 'core/check/y.ts', 'core-wire-looks-left-only'],
  ['core/check/x.ts', 'core/drawing/y.ts', 'core-check-looks-left-only'],
  ['core/check/x.ts', 'core/job.ts', 'core-check-looks-left-only'],
  ['core/inspect/x.ts', 'core/output/y.ts', 'core-inspect-looks-left-only'],
  ['core/output/x.ts', 'core/pipeline.ts', 'core-output-looks-left-only'],
  ['core/units.ts', 'core/geometry/y.ts', 'core-leaves-are-leaves'],
  ['core/wire/x.ts', 'core/plan.ts', 'core-plan-is-imported-as-types'],
  ['core/pipeline.ts', 'core/index.ts', 'core-has-no-barrel-inside'],
  ['core/die/x.ts', 'renderer/y.ts', 'core-imports-core-only'],
  ['core/die/x.ts', 'electron/services/y.ts', 'core-imports-core-only'],
  ['renderer/state/x.ts', 'electron/services/y.ts', 'renderer-sees-core-and-the-contract'],
  ['renderer/state/x.ts', 'core/pipeline.ts', 'pipeline-only-in-worker'],
  ['electron/services/x.ts', 'electron/main/y.ts', 'services-stand-alone'],
  ['electron/cli/x.ts', 'electron/local-window/y.ts', 'shells-do-not-know-each-other'],
  ['electron/preload/x.ts', 'electron/services/y.ts', 'preload-is-thin'],
  ['electron/main/x.ts', 'renderer/y.ts', 'electron-sees-core'],
  ['electron/contract/x.ts', 'core/job.ts', 'contract-is-plain'],
  ['build/x.ts', 'tests/y.ts', 'program-does-not-import-its-tests'],
])('%s may not import %s', async (from, to, rule) => {
  const path = relativePath(from, to);
  expect(await violationsOf({ [from]: use(path), [to]: a })).toContain(`${rule}: ${from} → ${to}`);
});

test.each([
  ['core/drawing/x.ts', 'core/geometry/y.ts'],
  ['core/drawing/x.ts', 'core/problem.ts'],
  ['core/check/x.ts', 'core/die/y.ts'],
  ['core/output/x.ts', 'core/check/y.ts'],
  ['core/output/x.ts', 'core/job.ts'],
  ['core/pipeline.ts', 'core/output/y.ts'],
  ['renderer/worker/x.ts', 'core/pipeline.ts'],
  ['renderer/host/x.ts', 'electron/contract/y.ts'],
  ['electron/cli/x.ts', 'electron/services/y.ts'],
  ['electron/cli/x.ts', 'core/index.ts'],
])('%s may import %s', async (from, to) => {
  expect(await violationsOf({ [from]: use(relativePath(from, to)), [to]: a })).toEqual([]);
});

test('the plan may be named as a type by the rooms that make it', async () => {
  const files = { 'core/wire/x.ts': useType('../plan'), 'core/plan.ts': a };
  expect(await violationsOf(files)).toEqual([]);
});

test.each([
  ['renderer/state/x.ts', 'konva', 'konva-only-in-canvas'],
  ['renderer/state/x.ts', 'comlink', 'comlink-only-in-worker'],
  ['renderer/state/x.ts', 'clipper-lib', 'clipper-and-dxf-parser-not-outside-core'],
  ['core/wire/x.ts', 'clipper-lib', 'clipper-only-in-check'],
  ['core/check/x.ts', 'dxf-parser', 'dxf-parser-only-in-drawing'],
  ['core/die/x.ts', 'react', 'core-has-few-libraries'],
  ['electron/services/x.ts', 'electron', 'electron-package-only-in-the-shell'],
  ['electron/cli/x.ts', 'electron', 'electron-package-only-in-the-shell'],
])('%s may not import the package %s', async (from, name, rule) => {
  const violations = await violationsOf({ [from]: use(name), ...library(name) });
  expect(violations.join('\n')).toContain(`${rule}: ${from}`);
});

test.each([
  ['renderer/canvas/x.ts', 'konva'],
  ['renderer/worker/x.ts', 'comlink'],
  ['core/check/x.ts', 'clipper-lib'],
  ['core/drawing/x.ts', 'dxf-parser'],
  ['core/geometry/x.ts', 'flatbush'],
  ['electron/main/x.ts', 'electron'],
])('%s may import the package %s', async (from, name) => {
  expect(await violationsOf({ [from]: use(name), ...library(name) })).toEqual([]);
});

test('core and renderer may not import Node', async () => {
  expect(await violationsOf({ 'core/die/x.ts': "import 'node:fs';\n" })).toEqual([
    'core-has-no-node: core/die/x.ts → fs',
  ]);
  expect(await violationsOf({ 'renderer/x.ts': "import 'fs';\n" })).toEqual([
    'renderer-has-no-node: renderer/x.ts → fs',
  ]);
});

test('a cycle is found, also one of types only', async () => {
  const cycle = await violationsOf({ 'core/die/x.ts': useType('./y'), 'core/die/y.ts': useType('./x') });
  expect(cycle.join('\n')).toContain('no-cycle');
});

test('an import that leads nowhere is found', async () => {
  expect(await violationsOf({ 'core/die/x.ts': use('./none') })).toEqual([
    'everything-resolves: core/die/x.ts → ./none',
  ]);
});

test('looks at every file of this project', async () => {
  const { looked } = await checkLayers(fileURLToPath(new URL('../..', import.meta.url)), rules);
  expect(looked).toBeGreaterThan(150);
});

function relativePath(from: string, to: string): string {
  const up = from
    .split('/')
    .slice(1)
    .map(() => '..')
    .join('/');
  return `${up}/${to.replace(/\.ts$/, '')}`;
}
