import * as v from 'valibot';

export const isRecord = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** The first thing wrong with a file, with its path. */
export function describeIssue(issue: v.BaseIssue<unknown>): string {
  const path = v.getDotPath(issue) ?? 'the file';
  if (issue.type === 'strict_object' && issue.expected === 'never') return `unknown key "${path}"`;
  if (issue.received === 'undefined') return `"${path}" is missing`;
  return `"${path}": expected ${issue.expected ?? issue.message}, found ${issue.received}`;
}
