/** How a share lost, or a way flown, may grow with the time since the burst. */

/** Mean over an exposure of what is 0 before the burst and then `law`; `before` and `after`: its ends since the burst. */
export function exposed(integral: (since: number) => number, begin: number, end: number): number {
  if (end <= 0) return 0;
  const width = end - begin;
  if (width <= 0) return 0;
  return (integral(end) - (begin > 0 ? integral(begin) : 0)) / width;
}

/** Integral from 0 of 1 - (1 - t)^p up to t = 1 and of 1 from there on: a loss that slows down towards its end. */
export const slowingLoss =
  (p: number) =>
  (t: number): number => {
    if (t <= 0) return 0;
    if (t >= 1) return t - 1 / (p + 1);
    return t - (1 - (1 - t) ** (p + 1)) / (p + 1);
  };

/** The same of t^p: a loss that gathers speed first. */
export const gatheringLoss =
  (p: number) =>
  (t: number): number => {
    if (t <= 0) return 0;
    return t >= 1 ? t - 1 + 1 / (p + 1) : t ** (p + 1) / (p + 1);
  };
