/** The part of an `AbortSignal` the measuring core needs; the core itself knows no platform. */
export interface Cancellation {
  readonly aborted: boolean;
  throwIfAborted(): void;
}
