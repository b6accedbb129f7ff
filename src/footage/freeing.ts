/**
 * A port without another end: what is handed over to it is gone at once. The garbage collector sees little of memory that
 * came from another thread or from a file, and lets frames lie by the hundred in each thread.
 */
const nowhere = new MessageChannel();
nowhere.port2.close();

/** Frees memory that only the caller has; each array is all of its buffer. */
export function freeMemory(arrays: readonly (Uint8Array | Uint16Array)[]): void {
  nowhere.port1.postMessage(
    null,
    arrays.map(({ buffer }) => buffer),
  );
}
