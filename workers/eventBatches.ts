/** Events come by the thousand; each message costs both threads more than what it tells. */
const TELL_EVERY_MS = 50;

/** Gathers events and tells of several at once: the first soon, then at most every so often. */
export function inEventBatches<Event>(tell: (events: readonly Event[]) => void) {
  let waiting: Event[] = [];
  let timer: ReturnType<typeof setTimeout> | null = null;
  const flush = () => {
    if (timer !== null) clearTimeout(timer);
    timer = null;
    if (waiting.length === 0) return;
    tell(waiting);
    waiting = [];
  };
  return {
    add(event: Event) {
      waiting.push(event);
      timer ??= setTimeout(flush, TELL_EVERY_MS);
    },
    /** Tells of what waits. */
    flush,
    /** Drops what waits. */
    drop() {
      waiting = [];
      flush();
    },
  };
}
