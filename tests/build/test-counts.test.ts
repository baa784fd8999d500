import { expect, test } from 'vitest';
import { sayCounts, testCounts } from '../../build/test-counts';

const file = (status: string, ...tests: string[]) => ({
  status,
  assertionResults: tests.map((testStatus) => ({ status: testStatus })),
});
const report = (...testResults: ReturnType<typeof file>[]) => JSON.stringify({ testResults });

test('counts test by test', () => {
  const text = report(
    file('passed', 'passed', 'passed', 'skipped'),
    file('failed', 'passed', 'failed', 'todo'),
  );
  expect(testCounts(text, 1)).toEqual({ passed: 3, failed: 1, skipped: 2 });
});

test('a file that does not load is a failure, although it holds no failed test', () => {
  expect(testCounts(report(file('failed'), file('passed', 'passed')), 1)).toMatchObject({
    passed: 1,
    failed: 1,
  });
});

test('an error outside every test, and a run without tests, are failures', () => {
  expect(testCounts(report(file('passed', 'passed')), 1)).toMatchObject({ failed: 1 });
  expect(testCounts(report(), 0)).toMatchObject({ failed: 1 });
  expect(testCounts(report(file('passed', 'skipped')), 0)).toMatchObject({ failed: 1 });
});

test('the last line is plain', () => {
  expect(sayCounts({ passed: 12, failed: 0, skipped: 0 })).toBe('12 passed, 0 failed');
  expect(sayCounts({ passed: 12, failed: 1, skipped: 3 })).toBe('12 passed, 1 failed, 3 skipped');
});
