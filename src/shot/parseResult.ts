import * as v from 'valibot';
import { failure, type Outcome, success } from '../core/reason';
import { describeIssue, isRecord } from './issues';
import { migrated } from './parse';
import { RESULT_FORMAT, RESULT_VERSION, type Result } from './result';
import { resultSchema } from './resultSchema';

/** The version that lacks nothing but `inputs`. */
const WITHOUT_INPUTS = 3;

/** A result of an older version as this one would have written it; the shot in it is read as a shot file is. */
function current(data: Record<string, unknown>): Record<string, unknown> {
  if (data.version === WITHOUT_INPUTS) return { ...data, version: RESULT_VERSION, inputs: null };
  const { inputs } = data;
  return isRecord(inputs) && isRecord(inputs.shot)
    ? { ...data, inputs: { ...inputs, shot: migrated(inputs.shot) } }
    : data;
}

/** A result file's data. Failures: `notResult`, `otherResultVersion`, `invalidResult`. */
export function validateResult(data: unknown): Outcome<Result> {
  if (!isRecord(data) || data.format !== RESULT_FORMAT) {
    return failure(
      'notResult',
      `This is not a result file: its "format" is not "${RESULT_FORMAT}".`,
      'Choose a file whose name ends in .result.json.',
      { format: RESULT_FORMAT },
    );
  }
  if (data.version !== RESULT_VERSION && data.version !== WITHOUT_INPUTS) {
    return failure(
      'otherResultVersion',
      `The result file has version ${String(data.version)}; this program reads version ${RESULT_VERSION}.`,
      'Reduce the shot anew with this program.',
      { version: String(data.version), known: RESULT_VERSION },
    );
  }
  const parsed = v.safeParse(resultSchema, current(data));
  if (parsed.success) return success(parsed.output);
  return failure(
    'invalidResult',
    `The result file cannot be used: ${describeIssue(parsed.issues[0])}.`,
    'Reduce the shot anew; the schema is in schemas/result.schema.json.',
    { why: describeIssue(parsed.issues[0]) },
  );
}
