// How many tests passed and failed, out of the JSON reports of the two runners. A file that fails to load counts as failed.

/** @typedef {{ passed: number, failed: number }} Counts */

/**
 * @param {{ numPassedTests: number, numFailedTests: number, testResults: { status: string, assertionResults: { status: string }[] }[] }} report
 * @returns {Counts}
 */
export function countVitest(report) {
  const broken = report.testResults.filter(
    (file) => file.status === 'failed' && !file.assertionResults.some((test) => test.status === 'failed'),
  )
  return { passed: report.numPassedTests, failed: report.numFailedTests + broken.length }
}

/**
 * @param {{ stats: { expected: number, unexpected: number, flaky: number }, errors: unknown[] }} report
 * @returns {Counts}
 */
export function countPlaywright({ stats, errors }) {
  return { passed: stats.expected, failed: stats.unexpected + stats.flaky + errors.length }
}
