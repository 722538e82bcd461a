// Reads how many checks passed, failed and were skipped out of the runners' own reports. A report that is
// missing, unreadable or tells of no test at all is a failure, never nothing.
import { readFileSync } from 'node:fs';

/** @typedef {{passed: number, failed: number, skipped: number}} Counts */

/**
 * @param {string} file
 * @returns {any} null where there is no readable report
 */
function readReport(file) {
  try {
    return JSON.parse(readFileSync(file, 'utf8'));
  } catch {
    return null;
  }
}

/**
 * A runner that says it failed must never come out as all passed, and one that ran nothing has failed.
 * @param {Counts} counts
 * @param {boolean} runnerSucceeded
 * @returns {Counts}
 */
function withRunnersWord(counts, runnerSucceeded) {
  const ranNothing = counts.passed + counts.failed === 0;
  if (counts.failed === 0 && (!runnerSucceeded || ranNothing)) return { ...counts, failed: 1 };
  return counts;
}

/**
 * A check that has no parts, such as the type checker.
 * @param {number} status
 * @returns {Counts}
 */
export function countOfOneCheck(status) {
  return { passed: status === 0 ? 1 : 0, failed: status === 0 ? 0 : 1, skipped: 0 };
}

/**
 * @param {string} reportFile written by Vitest's json reporter
 * @param {number} status of the runner
 * @returns {Counts}
 */
export function countVitest(reportFile, status) {
  const report = readReport(reportFile);
  if (report === null) return { passed: 0, failed: 1, skipped: 0 };
  /** @type {{status: string, assertionResults: unknown[]}[]} */
  const files = report.testResults;
  const filesThatDidNotLoad = files.filter((file) => file.status === 'failed' && file.assertionResults.length === 0);
  const counts = {
    passed: report.numPassedTests,
    failed: report.numFailedTests + filesThatDidNotLoad.length,
    skipped: report.numPendingTests + report.numTodoTests,
  };
  return withRunnersWord(counts, status === 0);
}

/**
 * @param {string} reportFile written by Playwright's json reporter
 * @param {number} status of the runner
 * @returns {Counts}
 */
export function countPlaywright(reportFile, status) {
  const report = readReport(reportFile);
  if (report === null) return { passed: 0, failed: 1, skipped: 0 };
  // `flaky` cannot come up without retries; if it ever does, it is not a pass.
  const { expected, unexpected, flaky, skipped } = report.stats;
  return withRunnersWord({ passed: expected, failed: unexpected + flaky, skipped }, status === 0);
}

/**
 * @param {readonly Counts[]} all
 * @returns {Counts}
 */
export function addCounts(all) {
  const total = { passed: 0, failed: 0, skipped: 0 };
  for (const { passed, failed, skipped } of all) {
    total.passed += passed;
    total.failed += failed;
    total.skipped += skipped;
  }
  return total;
}

/** @param {Counts} counts */
export function countsLine({ passed, failed, skipped }) {
  return `${passed} passed, ${failed} failed${skipped > 0 ? `, ${skipped} skipped` : ''}`;
}
