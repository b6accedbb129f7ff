import { stripVTControlCharacters } from 'node:util';

/** What failed in a run of vitest, for the end of `npm test`: its own telling may be far above. */

/** Most lines told of one message. */
const MOST_LINES = 8;

/**
 * Failed tests and files of the JSON report of a failed run (its text), each with the head of its message; at least
 * one line: a run may fail outside its tests, or come to no report.
 */
export function failuresIn(text) {
  let files;
  try {
    ({ testResults: files } = JSON.parse(text));
  } catch {
    return ['No report: the run was ended.'];
  }
  const failures = files.flatMap(({ name, status, message, assertionResults }) => {
    const failed = assertionResults.filter((test) => test.status === 'failed');
    if (failed.length > 0) {
      return failed.map(({ fullName, failureMessages }) => told(name, fullName, failureMessages));
    }
    return status === 'failed' ? [told(name, 'not run to its end', [message])] : [];
  });
  return failures.length > 0 ? failures : ['No test failed: see the errors printed above.'];
}

function told(file, test, messages) {
  const lines = messages.flatMap((message) =>
    stripVTControlCharacters(message).split('\n').slice(0, MOST_LINES),
  );
  return [`${file}: ${test}`, ...lines.map((line) => `    ${line}`)].join('\n');
}
