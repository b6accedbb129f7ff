import { extent } from 'd3';

/** Lowest and highest of the finite numbers given; `fallback` where there are none. */
export function domainOf(
  values: Iterable<number>,
  fallback: readonly [number, number] = [0, 1],
): readonly [number, number] {
  const [low, high] = extent([...values].filter(Number.isFinite));
  return low === undefined || high === undefined ? fallback : [low, high];
}

/** Widened by a share of its span on both sides; a domain without a span gets one. */
export function padded([low, high]: readonly [number, number], share: number) {
  const span = high - low || Math.abs(high) * 0.1 || 1;
  return [low - span * share, high + span * share] as const;
}

/** Values of a curve and the bounds of its band, for finding what an axis must hold. */
export function* bandBounds(curve: {
  readonly values: ArrayLike<number>;
  readonly u: ArrayLike<number>;
  readonly coverageFactor: number;
}): Generator<number> {
  for (let i = 0; i < curve.values.length; i++) {
    const value = curve.values[i] as number;
    const half = curve.coverageFactor * (curve.u[i] as number);
    yield value - half;
    yield value + half;
  }
}
