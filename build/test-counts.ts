/** What a test run came to. */
export interface TestCounts {
  readonly passed: number;
  readonly failed: number;
  readonly skipped: number;
}

/** The part of Vitest's JSON report that is read. */
interface Report {
  readonly testResults: readonly {
    readonly status: string;
    readonly assertionResults: readonly { readonly status: string }[];
  }[];
}

/**
 * Counts a Vitest JSON report test by test. A file that could not be loaded holds no tests and still counts as one
 * failure; so does a run that ended badly without any failed test (an error outside every test), and a run without
 * any test at all.
 */
export function testCounts(reportText: string, exitCode: number): TestCounts {
  const report = JSON.parse(reportText) as Report;
  const counts = { passed: 0, failed: 0, skipped: 0 };
  for (const file of report.testResults) {
    for (const test of file.assertionResults) {
      if (test.status === 'passed') counts.passed += 1;
      else if (test.status === 'failed') counts.failed += 1;
      else counts.skipped += 1;
    }
    const failedInside = file.assertionResults.some((test) => test.status === 'failed');
    if (file.status === 'failed' && !failedInside) counts.failed += 1;
  }
  if (counts.failed === 0 && (exitCode !== 0 || counts.passed === 0)) counts.failed = 1;
  return counts;
}

/** The plain last line, e.g. "41 passed, 0 failed, 2 skipped". */
export function sayCounts({ passed, failed, skipped }: TestCounts): string {
  return `${passed} passed, ${failed} failed${skipped > 0 ? `, ${skipped} skipped` : ''}`;
}
