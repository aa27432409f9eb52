import { expect, test } from 'vitest';
import { addCounts, type TestReport, tally } from './tally.mjs';

const clean: TestReport = {
  numPassedTests: 5,
  numFailedTests: 0,
  numPendingTests: 1,
  numTodoTests: 1,
  testResults: [{ status: 'passed', assertionResults: [{ status: 'passed' }] }],
};

test('counts what ran', () => {
  expect(tally(clean, 0)).toEqual({ passed: 5, failed: 0, skipped: 2 });
});

test('a failed test is not counted again for its file', () => {
  const file = { status: 'failed', assertionResults: [{ status: 'failed' }] };
  expect(tally({ ...clean, numFailedTests: 1, testResults: [file] }, 1).failed).toBe(1);
});

test('a file that does not load is a failure', () => {
  expect(tally({ ...clean, testResults: [{ status: 'failed', assertionResults: [] }] }, 1)).toMatchObject({
    failed: 1,
  });
});

test('an error outside of any test is a failure', () => {
  expect(tally(clean, 1)).toMatchObject({ failed: 1 });
});

test('no report at all is a failure', () => {
  expect(tally(undefined, null)).toEqual({ passed: 0, failed: 1, skipped: 0 });
});

test('runs side by side are counted together', () => {
  const one = { passed: 5, failed: 1, skipped: 2 };
  expect(addCounts([one, { passed: 40, failed: 10, skipped: 20 }])).toEqual({
    passed: 45,
    failed: 11,
    skipped: 22,
  });
  expect(addCounts([])).toEqual({ passed: 0, failed: 0, skipped: 0 });
});
