/**
 * Share of a square of side `size` that lies within a half-plane, exactly. `depth` is how far the square's
 * middle lies inside, (nx, ny) the border's unit normal: the square's shadow on the normal is a
 * trapezium, and the share its integral.
 */
export function coverOfCell(depth: number, nx: number, ny: number, size: number): number {
  const a = (Math.abs(nx) * size) / 2;
  const b = (Math.abs(ny) * size) / 2;
  const far = a + b;
  if (depth >= far) return 1;
  if (depth <= -far) return 0;
  const near = Math.abs(a - b);
  if (Math.abs(depth) <= near) return 0.5 + depth / (2 * Math.max(a, b));
  const rest = (far - Math.abs(depth)) ** 2 / (8 * a * b);
  return depth > 0 ? 1 - rest : rest;
}
