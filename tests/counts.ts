import { readFileSync } from 'node:fs';

export interface Count {
  readonly passed: number;
  readonly failed: number;
  /** Neither: skipped, or announced only. */
  readonly left: number;
  readonly seconds: number;
}

const NOTHING: Count = { passed: 0, failed: 0, left: 0, seconds: 0 };

export function sum(counts: Iterable<Count>): Count {
  let total = NOTHING;
  for (const count of counts) {
    total = {
      passed: total.passed + count.passed,
      failed: total.failed + count.failed,
      left: total.left + count.left,
      seconds: total.seconds + count.seconds,
    };
  }
  return total;
}

interface VitestReport {
  readonly testResults: readonly {
    readonly name: string;
    readonly status: string;
    readonly startTime: number;
    readonly endTime: number;
    readonly assertionResults: readonly { readonly status: string }[];
  }[];
}

/** Vitest's own figures by group; a file that could not be loaded counts as one failure. */
export function countVitest(file: string, groupOf: (path: string) => string): Map<string, Count> {
  const report = JSON.parse(readFileSync(file, 'utf8')) as VitestReport;
  const groups = new Map<string, Count>();
  for (const result of report.testResults) {
    const statuses = result.assertionResults.map(({ status }) => status);
    const passed = statuses.filter((status) => status === 'passed').length;
    const failed = statuses.filter((status) => status === 'failed').length;
    const group = groupOf(result.name);
    const count: Count = {
      passed,
      failed: failed === 0 && result.status === 'failed' ? 1 : failed,
      left: statuses.length - passed - failed,
      seconds: Math.max(0, result.endTime - result.startTime) / 1000,
    };
    groups.set(group, sum([groups.get(group) ?? NOTHING, count]));
  }
  return groups;
}

interface PlaywrightReport {
  readonly stats: {
    readonly expected: number;
    readonly unexpected: number;
    readonly flaky: number;
    readonly skipped: number;
    readonly duration: number;
  };
  readonly errors: readonly unknown[];
}

/** Playwright's own figures; an error outside any test counts as one failure. */
export function countPlaywright(file: string): Count {
  const { stats, errors } = JSON.parse(readFileSync(file, 'utf8')) as PlaywrightReport;
  const failed = stats.unexpected + stats.flaky;
  return {
    passed: stats.expected,
    failed: failed === 0 && errors.length > 0 ? 1 : failed,
    left: stats.skipped,
    seconds: stats.duration / 1000,
  };
}
