/** The frames of a film in display order. */
export interface Timeline {
  readonly count: number;
  /** Presentation times in the container's ticks. */
  readonly ticks: Float64Array;
  readonly ticksPerSecond: number;
  /** 1 where a decoder can start. */
  readonly key: Uint8Array;
}

export function timelineOf(
  packets: readonly { readonly time: number; readonly key: boolean }[],
  ticksPerSecond: number,
): Timeline {
  const shown = [...packets].sort((a, b) => a.time - b.time);
  return {
    count: shown.length,
    ticks: Float64Array.from(shown, ({ time }) => time),
    ticksPerSecond,
    key: Uint8Array.from(shown, ({ key }) => (key ? 1 : 0)),
  };
}

/** Presentation times, s, the first frame's at 0. */
export function secondsOf({ ticks, ticksPerSecond }: Timeline): Float64Array {
  const first = ticks[0] ?? 0;
  return ticks.map((time) => (time - first) / ticksPerSecond);
}

/** Mean rate of the presentation times; null where there is no interval. */
export function playbackRateOf({ count, ticks, ticksPerSecond }: Timeline): number | null {
  const span = (ticks.at(-1) ?? 0) - (ticks[0] ?? 0);
  return span > 0 ? ((count - 1) * ticksPerSecond) / span : null;
}
