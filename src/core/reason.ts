/** Why something could not be answered, in words a user can act on. */
export interface Reason {
  /** Stable, machine-readable, lowerCamelCase. */
  readonly code: string;
  /** What is wrong and where, one or two sentences. */
  readonly message: string;
  /** What to do about it. */
  readonly remedy?: string;
}

/** A value, or the reason there is none. Not-a-number never leaves a module: this does. */
export type Outcome<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly reason: Reason };

export const success = <T>(value: T): Outcome<T> => ({ ok: true, value });
export const failure = (code: string, message: string, remedy?: string): Outcome<never> => ({
  ok: false,
  reason: remedy === undefined ? { code, message } : { code, message, remedy },
});

/** Thrown where the caller cannot go on: bad input, a broken file, a fault. Carries its reason over threads. */
export class ExitframeError extends Error implements Reason {
  readonly code: string;
  readonly remedy?: string;

  constructor(code: string, message: string, remedy?: string, options?: ErrorOptions) {
    super(message, options);
    this.name = 'ExitframeError';
    this.code = code;
    if (remedy !== undefined) this.remedy = remedy;
  }
}

/** The reason behind anything thrown; an unforeseen error keeps its own message under `unexpected`. */
export function reasonOf(error: unknown): Reason {
  if (error instanceof ExitframeError) {
    const { code, message, remedy } = error;
    return remedy === undefined ? { code, message } : { code, message, remedy };
  }
  if (error instanceof Error) {
    return error.name === 'AbortError'
      ? { code: 'cancelled', message: 'The work was cancelled.' }
      : { code: 'unexpected', message: error.message };
  }
  return { code: 'unexpected', message: String(error) };
}
