import { existsSync, mkdirSync, readFileSync, rmSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { checkLayers } from './check-layers';
import { projectFolder, runNode } from './run-command';
import { sayCounts, testCounts, type TestCounts } from './test-counts';

/**
 * `npm run check` and, with `--build`, `npm test`: every static check, then all tests. A step that fails does not
 * stop the others, so that one run tells everything. Each static check counts as one in the last line.
 */
const steps: readonly { readonly name: string; readonly run: () => Promise<boolean> }[] = [
  { name: 'format', run: () => tool('prettier/bin/prettier.cjs', '--check', '--log-level', 'warn', '.') },
  { name: 'lint', run: () => tool('eslint/bin/eslint.js', '-c', 'build/eslint.config.js', '.') },
  { name: 'types', run: () => tool('typescript/bin/tsc', '-b') },
  { name: 'layers', run: layers },
  ...(process.argv.includes('--build') ? [{ name: 'build', run: build }] : []),
];

let passed = 0;
let failed = 0;
for (const step of steps) {
  const startedAt = performance.now();
  const ok = await step.run();
  const seconds = ((performance.now() - startedAt) / 1000).toFixed(1);
  console.log(`${ok ? 'passed' : 'FAILED'}  ${step.name} (${seconds} s)`);
  if (ok) passed += 1;
  else failed += 1;
}

const tests = await runTests();
const counts = {
  passed: passed + tests.passed,
  failed: failed + tests.failed,
  skipped: tests.skipped,
};
console.log(sayCounts(counts));
process.exitCode = counts.failed === 0 ? 0 : 1;

async function tool(script: string, ...args: string[]): Promise<boolean> {
  return (await runNode([join(projectFolder, 'node_modules', script), ...args])) === 0;
}

async function layers(): Promise<boolean> {
  const { looked, violations } = await checkLayers(
    projectFolder,
    join(projectFolder, 'build/dependency-rules.cjs'),
  );
  for (const line of violations) console.log(line);
  console.log(`${looked} files looked at, ${violations.length} imports against the rules`);
  return violations.length === 0;
}

async function build(): Promise<boolean> {
  return (await runNode(['build/run-typescript.mjs', 'build/build.ts'])) === 0;
}

async function runTests(): Promise<TestCounts> {
  const report = join(projectFolder, 'dist/check/tests.json');
  mkdirSync(dirname(report), { recursive: true });
  rmSync(report, { force: true });
  const exitCode = await runNode([
    join(projectFolder, 'node_modules/vitest/vitest.mjs'),
    'run',
    '--config',
    'build/vitest.config.ts',
    '--reporter=default',
    '--reporter=json',
    `--outputFile.json=${report}`,
  ]);
  // A run that dies leaves no report: one failure, whatever else it might have found.
  if (!existsSync(report)) return { passed: 0, failed: 1, skipped: 0 };
  return testCounts(readFileSync(report, 'utf8'), exitCode);
}
