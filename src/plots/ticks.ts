import { ticks } from 'd3';

/** Round whole numbers from `low` to `high`, about `count` of them, never closer than 1. */
export const wholeTicks = (low: number, high: number, count: number): number[] => {
  const span = Math.floor(high) - Math.ceil(low);
  return ticks(low, high, Math.max(1, Math.min(count, span))).filter(Number.isInteger);
};
