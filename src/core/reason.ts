/** Why something could not be answered, in words a user can act on. */
export interface Reason {
  /** Stable, machine-readable, lowerCamelCase. */
  readonly code: string;
  /** What is wrong and where, one or two sentences. */
  readonly message: string;
  /** What to do about it. */
  readonly remedy?: string;
  /** What stands in the message and remedy, by name, for those who say it in another language. */
  readonly values?: ReasonValues;
}

/** Numbers choose plural forms; a quantity is given as `formatQuantity` or `quantityText` writes it. */
export type ReasonValues = Readonly<Record<string, number | string>>;

/** A value, or the reason there is none. Not-a-number never leaves a module: this does. */
export type Outcome<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly reason: Reason };

export const success = <T>(value: T): Outcome<T> => ({ ok: true, value });
export const failure = (
  code: string,
  message: string,
  remedy?: string,
  values?: ReasonValues,
): Outcome<never> => ({ ok: false, reason: reasonFrom({ code, message, remedy, values }) });

/** What was found, or thrown why there is none: for those who cannot go on without it. */
export function orThrow<T>(outcome: Outcome<T>): T {
  if (outcome.ok) return outcome.value;
  const { code, message, remedy, values } = outcome.reason;
  throw new ExitframeError(code, message, remedy, { values });
}

/** What may be undefined in a reason is left out of it: it goes into files. */
function reasonFrom(parts: {
  readonly code: string;
  readonly message: string;
  readonly remedy: string | undefined;
  readonly values: ReasonValues | undefined;
}): Reason {
  const { code, message, remedy, values } = parts;
  return {
    code,
    message,
    ...(remedy === undefined ? {} : { remedy }),
    ...(values === undefined ? {} : { values }),
  };
}

/** Thrown where the caller cannot go on: bad input, a broken file, a fault. Carries its reason over threads. */
export class ExitframeError extends Error implements Reason {
  readonly code: string;
  readonly remedy?: string;
  readonly values?: ReasonValues;

  constructor(
    code: string,
    message: string,
    remedy?: string,
    options?: ErrorOptions & { readonly values?: ReasonValues | undefined },
  ) {
    super(message, options);
    this.name = 'ExitframeError';
    this.code = code;
    if (remedy !== undefined) this.remedy = remedy;
    if (options?.values !== undefined) this.values = options.values;
  }
}

const unexpected = (message: string): Reason => ({
  code: 'unexpected',
  message,
  values: { said: message },
});

/** The reason behind anything thrown; an unforeseen error keeps its own message under `unexpected`. */
export function reasonOf(error: unknown): Reason {
  if (error instanceof ExitframeError) {
    const { code, message, remedy, values } = error;
    return reasonFrom({ code, message, remedy, values });
  }
  if (error instanceof Error) {
    return error.name === 'AbortError'
      ? { code: 'cancelled', message: 'The work was cancelled.' }
      : unexpected(error.message);
  }
  return unexpected(String(error));
}
