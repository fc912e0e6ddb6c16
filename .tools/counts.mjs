// How many tests passed, failed and were not run, out of the JSON reports of the two runners. A file that fails to load counts as failed.

/** @typedef {{ passed: number, failed: number, skipped: number }} Counts */

/**
 * @param {{ numPassedTests: number, numFailedTests: number, numPendingTests: number, numTodoTests: number, testResults: { status: string, assertionResults: { status: string }[] }[] }} report
 * @returns {Counts}
 */
export function countVitest(report) {
  const broken = report.testResults.filter(
    (file) => file.status === 'failed' && !file.assertionResults.some((test) => test.status === 'failed'),
  )
  return {
    passed: report.numPassedTests,
    failed: report.numFailedTests + broken.length,
    skipped: report.numPendingTests + report.numTodoTests,
  }
}

/**
 * @param {{ stats: { expected: number, unexpected: number, flaky: number, skipped: number }, errors: unknown[] }} report
 * @returns {Counts}
 */
export function countPlaywright({ stats, errors }) {
  return { passed: stats.expected, failed: stats.unexpected + stats.flaky + errors.length, skipped: stats.skipped }
}

/** The closing line of a run of all tests. What was not run is said only where there is any. */
export const closingLine = (/** @type {Counts} */ { passed, failed, skipped }) =>
  `${passed} passed, ${failed} failed${skipped > 0 ? `, ${skipped} skipped` : ''}`
