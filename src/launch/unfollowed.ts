import { ExitframeError, type Outcome, success } from '../core/reason';

/** What the gas dynamics says of a launcher whose gas it cannot follow: a bore several balls wide, say. */
const CODES: ReadonlySet<string> = new Set(['gasStateLost', 'modelNotConverged']);

/** What `run` gives, or why a model cannot follow the launcher. Other errors are thrown on. */
export function followed<T>(run: () => T): Outcome<T> {
  try {
    return success(run());
  } catch (error) {
    if (error instanceof ExitframeError && CODES.has(error.code)) {
      return { ok: false, reason: error };
    }
    throw error;
  }
}
